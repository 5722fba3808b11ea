import type { Lettering } from '../design/schema.ts';
import { boxOfPath } from '../geometry/path.ts';
import type { Mm } from '../measure/units.ts';
import type { Font } from './font.ts';

/** A character in its place on a straight baseline. */
export interface Slot {
  readonly character: string;
  readonly line: number;
  /** Left end of its advance, and its baseline. */
  readonly x: Mm;
  readonly y: Mm;
  readonly advance: Mm;
  /** Millimeters a font unit. */
  readonly scale: number;
}

/** Text set in straight lines: x = 0 is the middle of the widest line's ink, y = 0 the first baseline. */
export interface Setting {
  readonly slots: readonly Slot[];
  readonly lines: readonly SetLine[];
  /** Characters that the font cannot draw, each once, in order of first use. */
  readonly missing: readonly string[];
}

export interface SetLine {
  readonly baseline: Mm;
  readonly capHeight: Mm;
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
 * both cap heights; for equal lines that is lineSpace times the cap height.
 */
export function setText(lettering: Lettering, font: Font, factor: number): Setting {
  const rows = lettering.lines.map((line, index) => {
    const capHeight = (line.capHeight ?? lettering.capHeight) * factor;
    return setLine(charactersOf(line.text), index, capHeight, lettering, font);
  });
  const baselines = stack(
    rows.map((row) => row.capHeight),
    lettering.lineSpace,
  );
  const widest = Math.max(...rows.map((row) => row.right - row.left));
  const anchor = { left: -widest / 2, center: 0, right: widest / 2 }[lettering.align];
  const slots: Slot[] = [];
  const lines: SetLine[] = [];
  rows.forEach((row, i) => {
    const baseline = baselines[i] ?? 0;
    const held = { left: row.left, center: (row.left + row.right) / 2, right: row.right }[lettering.align];
    const by = anchor - held;
    for (const slot of row.slots) slots.push({ ...slot, x: slot.x + by, y: baseline });
    lines.push({
      baseline,
      capHeight: row.capHeight,
      width: row.width,
      left: row.left + by,
      right: row.right + by,
    });
  });
  return { slots, lines, missing: missingOf(slots, font) };
}

/** Letters of a text as a person counts them, composed where Unicode has a composed form. */
const charactersOf = (text: string): string[] =>
  Array.from(text.normalize('NFC'), (c) => (/\s/u.test(c) ? ' ' : c)).filter((c) => !/\p{C}/u.test(c));

function setLine(
  characters: readonly string[],
  line: number,
  capHeight: Mm,
  { tracking, wordSpace, kerning }: Lettering,
  font: Font,
) {
  const scale = capHeight / font.capHeight;
  const slots: Slot[] = [];
  let pen = 0;
  let left = Infinity;
  let right = -Infinity;
  characters.forEach((character, i) => {
    const advance = font.advance(character) * scale;
    slots.push({ character, line, x: pen, y: 0, advance, scale });
    const path = font.outline(character);
    if (path.length > 0) {
      const { x, w } = boxOfPath(path);
      left = Math.min(left, pen + x * scale);
      right = Math.max(right, pen + (x + w) * scale);
    }
    pen += advance;
    if (character === ' ') pen += wordSpace * capHeight;
    const next = characters[i + 1];
    if (next !== undefined) pen += tracking * capHeight + (kerning ? font.kern(character, next) * scale : 0);
  });
  const inked = left <= right;
  return { slots, capHeight, width: pen, left: inked ? left : 0, right: inked ? right : pen };
}

function stack(capHeights: readonly Mm[], lineSpace: number): Mm[] {
  let y = 0;
  return capHeights.map((capHeight, i) => {
    const above = capHeights[i - 1];
    if (above !== undefined) y -= capHeight + ((lineSpace - 1) * (above + capHeight)) / 2;
    return y;
  });
}

function missingOf(slots: readonly Slot[], font: Font): string[] {
  const missing = new Set<string>();
  for (const { character } of slots) {
    if (character !== ' ' && !font.has(character)) missing.add(character);
  }
  return [...missing];
}
