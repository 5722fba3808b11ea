import type { Lettering, LetterLine } from '../design/schema.ts';
import { boxOfPath } from '../geometry/path.ts';
import { at } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Font } from './font.ts';
import { type Sized, sizedCharacters } from './sizes.ts';

/** A character in its place on a straight baseline. */
export interface Slot<F extends Font = Font> {
  readonly character: string;
  readonly line: number;
  /** Left end of its advance, and its baseline. */
  readonly x: Mm;
  readonly y: Mm;
  readonly advance: Mm;
  /** How far the letter stands over its baseline. */
  readonly rise: Mm;
  /** Millimeters a font unit. */
  readonly scale: number;
  readonly font: F;
}

/** Text set in straight lines: x = 0 is the middle of the widest line's ink, y = 0 the first baseline. */
export interface Setting<F extends Font = Font> {
  readonly slots: readonly Slot<F>[];
  readonly lines: readonly SetLine[];
  /** Characters that their font cannot draw, each once, in order of first use. */
  readonly missing: readonly string[];
}

export interface SetLine {
  readonly baseline: Mm;
  readonly capHeight: Mm;
  /** Top of its highest caps and foot of its lowest letters, over the baseline; 0 or less for the foot. */
  readonly top: Mm;
  readonly foot: Mm;
  /** Sum of the kerned advances, tracking and word spaces included. */
  readonly width: Mm;
  /** Ends of the ink after alignment. */
  readonly left: Mm;
  readonly right: Mm;
}

/**
 * Sets the lines at `factor` times the cap heights asked for. Lines are aligned by their ink, not by
 * their advances: the white that a font keeps beside its letters would otherwise make a T look moved in
 * from an H below it, and a centered line look off its middle.
 *
 * Baseline to baseline is the lower line's cap height plus the white, (lineSpace - 1) times the mean of
 * both cap heights; for equal lines that is lineSpace times the cap height. Letters larger than their line
 * push it away by what they stand out of it.
 */
export function setText<F extends Font>(
  lettering: Lettering,
  fontOf: (line: LetterLine) => F,
  factor: number,
): Setting<F> {
  const rows = lettering.lines.map((line, index) => {
    const capHeight = (line.capHeight ?? lettering.capHeight) * factor;
    const font = fontOf(line);
    return setLine(sizedCharacters(line, capHeight, font), index, capHeight, lettering, font);
  });
  const baselines = stack(rows, lettering.lineSpace);
  const widest = Math.max(...rows.map((row) => row.right - row.left));
  const anchor = { left: -widest / 2, center: 0, right: widest / 2 }[lettering.align];
  const slots: Slot<F>[] = [];
  const lines: SetLine[] = [];
  rows.forEach((row, i) => {
    const baseline = at(baselines, i);
    const held = { left: row.left, center: (row.left + row.right) / 2, right: row.right }[lettering.align];
    const by = anchor - held;
    for (const slot of row.slots) slots.push({ ...slot, x: slot.x + by, y: baseline });
    lines.push({
      baseline,
      capHeight: row.capHeight,
      top: row.top,
      foot: row.foot,
      width: row.width,
      left: row.left + by,
      right: row.right + by,
    });
  });
  return { slots, lines, missing: missingOf(slots) };
}

/**
 * Pairs are kerned where both letters are of one size and stand equally high: a font's pairs are drawn for
 * those alone. Tracking between two sizes is the mean of theirs.
 */
function setLine<F extends Font>(
  characters: readonly Sized[],
  line: number,
  capHeight: Mm,
  { tracking, wordSpace, kerning }: Lettering,
  font: F,
) {
  const slots: Slot<F>[] = [];
  let pen = 0;
  let left = Infinity;
  let right = -Infinity;
  characters.forEach(({ character, capHeight: own, rise }, i) => {
    const scale = own / font.capHeight;
    const advance = font.advance(character) * scale;
    slots.push({ character, line, x: pen, y: 0, advance, rise, scale, font });
    const path = font.outline(character);
    if (path.length > 0) {
      const { x, w } = boxOfPath(path);
      left = Math.min(left, pen + x * scale);
      right = Math.max(right, pen + (x + w) * scale);
    }
    pen += advance;
    if (character === ' ') pen += wordSpace * own;
    const next = characters[i + 1];
    if (next === undefined) return;
    const alike = next.capHeight === own && next.rise === rise;
    pen += (tracking * (own + next.capHeight)) / 2;
    if (kerning && alike) pen += font.kern(character, next.character) * scale;
  });
  const inked = left <= right;
  return {
    slots,
    capHeight,
    top: Math.max(capHeight, ...characters.map((c) => c.rise + c.capHeight)),
    foot: Math.min(0, ...characters.map((c) => c.rise)),
    width: pen,
    left: inked ? left : 0,
    right: inked ? right : pen,
  };
}

function stack(rows: readonly Pick<SetLine, 'capHeight' | 'top' | 'foot'>[], lineSpace: number): Mm[] {
  let y = 0;
  return rows.map(({ capHeight, top }, i) => {
    const above = rows[i - 1];
    if (above) y -= top - above.foot + ((lineSpace - 1) * (above.capHeight + capHeight)) / 2;
    return y;
  });
}

function missingOf(slots: readonly Slot[]): string[] {
  const missing = new Set<string>();
  for (const { character, font } of slots) {
    if (character !== ' ' && !font.has(character)) missing.add(character);
  }
  return [...missing];
}
