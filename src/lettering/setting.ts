import { featuresOfLine } from '../design/look.ts';
import type { Lettering, LetterLine } from '../design/schema.ts';
import { boxOfPath } from '../geometry/path.ts';
import { at, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Font } from './font.ts';
import { fontKern, opticalKern } from './optical.ts';
import { isFromRight } from './script.ts';
import { type Sized, sizedCharacters } from './sizes.ts';

/** A character, or several that stand as one, in its place on a straight baseline. */
export interface Slot<F extends Font = Font> {
  readonly character: string;
  /** By which its font draws it. */
  readonly key: string;
  readonly line: number;
  /** Left end of its advance, and its baseline. */
  readonly x: Mm;
  readonly y: Mm;
  readonly advance: Mm;
  /** How far the letter stands over its baseline. */
  readonly rise: Mm;
  /** Written joined: where its line is bent, it is bent too. */
  readonly joined: boolean;
  /** Millimeters a font unit. */
  readonly scale: number;
  readonly font: F;
}

/** Text set in straight lines: x = 0 is the middle of the widest line's ink, y = 0 the first baseline. */
export interface Setting<F extends Font = Font> {
  /** In the order of reading. */
  readonly slots: readonly Slot<F>[];
  readonly lines: readonly SetLine[];
  /** Characters that their font cannot draw, each once, in order of first use. */
  readonly missing: readonly string[];
  /** Characters that their font has no rules to set right, likewise. */
  readonly unruled: readonly string[];
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
 * push it away by what they stand out of it, and so do ribbons.
 */
export function setText<F extends Font>(
  lettering: Lettering,
  fontOf: (line: LetterLine) => F,
  factor: number,
): Setting<F> {
  const marks = marksOf(lettering.lines);
  const first = lettering.lines.find(({ mark }) => mark);
  const fromRight = first !== undefined && isFromRight(first.text);
  const rowAt = (line: LetterLine, index: number, by: number) => {
    const capHeight = (line.capHeight ?? lettering.capHeight) * by;
    const font = fontOf(line);
    const set = (characters: readonly Sized[]) => setLine(characters, index, capHeight, lettering, font);
    const how = { spaced: lettering.tracking !== 0, features: featuresOfLine(lettering, line) };
    const row = set(sizedCharacters(line, capHeight, font, how));
    const mark = marks[index];
    if (!mark) return row;
    const text = fromRight ? [...mark].reverse().join('') : mark;
    return marked(row, set(sizedCharacters({ text }, capHeight, font, how)), fromRight);
  };
  const asked = lettering.lines.map((line, i) => rowAt(line, i, factor));
  const rows =
    lettering.fit === 'lines'
      ? asked.map((row, i) => {
          const by = widthOf(row) > 0 ? Math.max(...asked.map(widthOf)) / widthOf(row) : 1;
          return rowAt(pick(lettering.lines, i), i, factor * by);
        })
      : asked;
  const ribbons = lettering.lines.map(({ look = lettering }) => look.ribbon?.margin ?? 0);
  const baselines = stack(rows, lettering.lineSpace, ribbons);
  const held = heldOf(rows, marks);
  const widest = Math.max(...held.map(widthOf));
  const anchor = { left: -widest / 2, center: 0, right: widest / 2 }[lettering.align];
  const slots: Slot<F>[] = [];
  const lines: SetLine[] = [];
  rows.forEach((row, i) => {
    const baseline = at(baselines, i);
    const { left, right } = pick(held, i);
    const by = anchor - { left, center: (left + right) / 2, right }[lettering.align];
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
  return { slots, lines, missing: missingOf(slots), unruled: each(rows.flatMap((row) => row.unruled)) };
}

/** Each once, in order of first use. */
const each = (characters: readonly string[]): string[] => [...new Set(characters)];

/**
 * Pairs are kerned where both letters are of one size and stand equally high: a font's pairs are drawn for
 * those alone. Tracking between two sizes is the mean of theirs.
 */
function setLine<F extends Font>(
  characters: readonly Sized[],
  line: number,
  capHeight: Mm,
  { tracking, wordSpace, kerning, optical }: Lettering,
  font: F,
) {
  const byEye = optical ? opticalKern(font) : null;
  const kern = byEye ?? (kerning ? fontKern(font) : null);
  const stood: { readonly slot: Slot<F>; readonly index: number }[] = [];
  let pen = 0;
  let left = Infinity;
  let right = -Infinity;
  characters.forEach((letter, i) => {
    const { character, index, capHeight: own, rise, joined } = letter;
    const key = (byEye || !kerning ? null : letter.kerned?.key) ?? letter.key;
    const scale = own / font.capHeight;
    const advance = font.advance(letter.key) * scale;
    stood.push({ slot: { character, key, line, x: pen, y: 0, advance, rise, joined, scale, font }, index });
    const path = font.outline(key);
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
    if (!joined || !next.joined) pen += (tracking * (own + next.capHeight)) / 2;
    if (kern && alike) pen += kern(letter, next) * scale;
  });
  const inked = left <= right;
  return {
    slots: stood.sort((a, b) => a.index - b.index).map(({ slot }) => slot),
    unruled: characters.filter(({ unruled }) => unruled).map(({ character }) => character),
    capHeight,
    top: Math.max(capHeight, ...characters.map((c) => c.rise + c.capHeight)),
    foot: Math.min(0, ...characters.map((c) => c.rise)),
    width: pen,
    left: inked ? left : 0,
    right: inked ? right : pen,
  };
}

type Row = ReturnType<typeof setLine>;

const widthOf = ({ left, right }: Pick<SetLine, 'left' | 'right'>): Mm => right - left;

/** White between a mark and the line behind it, share of the cap height. Our own choice. */
const AFTER_MARK = 0.4;

/** What stands before each line; null for nothing. */
function marksOf(lines: readonly LetterLine[]): (string | null)[] {
  let number = 0;
  return lines.map(({ mark }) => (mark === 'number' ? `${++number}.` : mark === 'bullet' ? '•' : null));
}

/** A line with its mark before it: the line's own ink begins at 0, or, in a list that runs from the right, ends there. */
function marked<F extends Font>(
  row: Row & { slots: Slot<F>[] },
  mark: Row & { slots: Slot<F>[] },
  fromRight: boolean,
) {
  const white = AFTER_MARK * row.capHeight;
  const by = fromRight ? white - mark.left : -white - mark.right;
  const start = fromRight ? row.right : row.left;
  const moved = (slots: readonly Slot<F>[], x: Mm) => slots.map((slot) => ({ ...slot, x: slot.x + x }));
  return {
    ...row,
    slots: [...moved(mark.slots, by), ...moved(row.slots, -start)],
    width: fromRight ? mark.right + by + row.right : row.width - row.left - mark.left - by,
    left: fromRight ? row.left - start : mark.left + by,
    right: fromRight ? mark.right + by : row.right - start,
  };
}

/** Between what each line is aligned: its own ink, or, of lines with marks, that of all of them, which begin or end at 0. */
function heldOf(rows: readonly Row[], marks: readonly (string | null)[]): { left: Mm; right: Mm }[] {
  const listed = rows.filter((_, i) => marks[i]);
  const left = Math.min(...listed.map((row) => row.left));
  const right = Math.max(...listed.map((row) => row.right));
  return rows.map((row, i) => (marks[i] ? { left, right } : row));
}

function stack(
  rows: readonly Pick<SetLine, 'capHeight' | 'top' | 'foot'>[],
  lineSpace: number,
  ribbons: readonly Mm[],
): Mm[] {
  let y = 0;
  return rows.map(({ capHeight, top }, i) => {
    const above = rows[i - 1];
    if (above) {
      const white = ((lineSpace - 1) * (above.capHeight + capHeight)) / 2;
      y -= top - above.foot + white + pick(ribbons, i) + pick(ribbons, i - 1);
    }
    return y;
  });
}

function missingOf(slots: readonly Slot[]): string[] {
  return each(
    slots
      .filter(({ character, key, font }) => character !== ' ' && !font.has(key))
      .map(({ character }) => character),
  );
}
