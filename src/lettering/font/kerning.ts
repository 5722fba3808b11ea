import type { Bytes } from './bytes.ts';
import { firstWhere } from './characters.ts';

/** Kerning between two glyphs in font units, added to the advance of the left one. */
export type KernOf = (left: number, right: number) => number;

/** What one subtable says of a pair: a value, or null when the pair is not its business. */
type Subtable = (left: number, right: number) => number | null;

/** Scripts asked for in this order; lettering is laid out from left to right, letter by letter. */
const SCRIPTS = ['latn', 'DFLT', 'cyrl', 'grek'];
const PAIRS = 2;
const EXTENSION = 9;
/** Real fonts have a handful; more would only make a damaged file slow. */
const MOST_SUBTABLES = 500;

/**
 * Kerning from a `GPOS` table: every pair lookup of the `kern` feature, both formats, also behind
 * Extension lookups (OpenType specification, GPOS lookup types 2 and 9). Lookups add up; within a lookup
 * the first subtable that knows the pair decides. Null when the font has no `kern` feature at all.
 */
export function positionedKerning(gpos: Bytes): KernOf | null {
  const lookups = kernLookups(gpos);
  if (lookups.length === 0) return null;
  let count = 0;
  const readers = lookups.map((lookup) => {
    const subtables = subtablesOf(gpos, lookup);
    count += subtables.length;
    return subtables;
  });
  if (count > MOST_SUBTABLES) gpos.damaged();
  return (left, right) => {
    let sum = 0;
    for (const subtables of readers) sum += firstValue(subtables, left, right);
    return sum;
  };
}

function firstValue(subtables: readonly Subtable[], left: number, right: number): number {
  for (const subtable of subtables) {
    const value = subtable(left, right);
    if (value !== null) return value;
  }
  return 0;
}

/** Offsets of the lookups that the `kern` feature of the first known script uses, in lookup order. */
function kernLookups(gpos: Bytes): number[] {
  const language = languageOf(gpos);
  if (language === null) return [];
  const features = gpos.u16(6);
  const lookups = gpos.u16(8);
  const indexes = new Set<number>();
  const featureCount = gpos.u16(language + 4);
  for (let i = 0; i < featureCount; i += 1) {
    const record = features + 2 + 6 * gpos.u16(language + 6 + 2 * i);
    if (gpos.tag(record) !== 'kern') continue;
    const feature = features + gpos.u16(record + 4);
    const lookupCount = gpos.u16(feature + 2);
    for (let k = 0; k < lookupCount; k += 1) indexes.add(gpos.u16(feature + 4 + 2 * k));
  }
  return [...indexes].sort((a, b) => a - b).map((index) => lookups + gpos.u16(lookups + 2 + 2 * index));
}

/** Offset of the default language system of the script that serves our text. */
function languageOf(gpos: Bytes): number | null {
  const scripts = gpos.u16(4);
  const count = gpos.u16(scripts);
  const byTag = new Map<string, number>();
  for (let i = 0; i < count; i += 1) {
    const record = scripts + 2 + 6 * i;
    byTag.set(gpos.tag(record), scripts + gpos.u16(record + 4));
  }
  const script = SCRIPTS.map((tag) => byTag.get(tag)).find((at) => at !== undefined);
  if (script === undefined) return null;
  const language = gpos.u16(script);
  return language === 0 ? null : script + language;
}

function subtablesOf(gpos: Bytes, lookup: number): Subtable[] {
  const type = gpos.u16(lookup);
  const count = Math.min(gpos.u16(lookup + 4), MOST_SUBTABLES + 1);
  const subtables: Subtable[] = [];
  for (let i = 0; i < count; i += 1) {
    const at = lookup + gpos.u16(lookup + 6 + 2 * i);
    const extended = type === EXTENSION && gpos.u16(at + 2) === PAIRS;
    if (type !== PAIRS && !extended) continue;
    const start = extended ? at + gpos.u32(at + 4) : at;
    const format = gpos.u16(start);
    if (format === 1) subtables.push(pairsByGlyph(gpos, start));
    if (format === 2) subtables.push(pairsByClass(gpos, start));
  }
  return subtables;
}

/** Bits of a value format: x and y placement, x and y advance, then four device tables. */
const X_ADVANCE = 0x0004;
const bitsIn = (format: number): number => {
  let bits = 0;
  for (let rest = format; rest > 0; rest >>= 1) bits += rest & 1;
  return bits;
};

/** How far into a value record the x advance stands, or null when the format has none. */
const advanceAt = (format: number): number | null =>
  format & X_ADVANCE ? 2 * bitsIn(format & (X_ADVANCE - 1)) : null;

function pairsByGlyph(gpos: Bytes, start: number): Subtable {
  const covered = coverage(gpos, start + gpos.u16(start + 2));
  const format = gpos.u16(start + 4);
  const size = 2 + 2 * (bitsIn(format) + bitsIn(gpos.u16(start + 6)));
  const advance = advanceAt(format);
  return (left, right) => {
    const index = covered(left);
    if (index === null) return null;
    const set = start + gpos.u16(start + 10 + 2 * index);
    const count = gpos.u16(set);
    const i = firstWhere(count, (k) => gpos.u16(set + 2 + size * k) >= right);
    if (i === count || gpos.u16(set + 2 + size * i) !== right) return null;
    return advance === null ? 0 : gpos.i16(set + 4 + size * i + advance);
  };
}

function pairsByClass(gpos: Bytes, start: number): Subtable {
  const covered = coverage(gpos, start + gpos.u16(start + 2));
  const format = gpos.u16(start + 4);
  const size = 2 * (bitsIn(format) + bitsIn(gpos.u16(start + 6)));
  const advance = advanceAt(format);
  const leftClass = classes(gpos, start + gpos.u16(start + 8));
  const rightClass = classes(gpos, start + gpos.u16(start + 10));
  const leftCount = gpos.u16(start + 12);
  const rightCount = gpos.u16(start + 14);
  return (left, right) => {
    if (covered(left) === null) return null;
    const row = leftClass(left);
    const column = rightClass(right);
    if (row >= leftCount || column >= rightCount) return null;
    return advance === null ? 0 : gpos.i16(start + 16 + size * (row * rightCount + column) + advance);
  };
}

/** Index of a glyph in a coverage table; null when it is not covered. */
function coverage(gpos: Bytes, start: number): (glyph: number) => number | null {
  const count = gpos.u16(start + 2);
  if (gpos.u16(start) === 1) {
    return (glyph) => {
      const i = firstWhere(count, (k) => gpos.u16(start + 4 + 2 * k) >= glyph);
      return i < count && gpos.u16(start + 4 + 2 * i) === glyph ? i : null;
    };
  }
  const rangeOf = ranges(gpos, start);
  return (glyph) => {
    const at = rangeOf(glyph);
    return at === null ? null : gpos.u16(at + 4) + glyph - gpos.u16(at);
  };
}

/** Where the range of glyphs stands that holds a glyph, in the second format of both tables; null where none does. */
function ranges(gpos: Bytes, start: number): (glyph: number) => number | null {
  const count = gpos.u16(start + 2);
  return (glyph) => {
    const i = firstWhere(count, (k) => gpos.u16(start + 4 + 6 * k + 2) >= glyph);
    const at = start + 4 + 6 * i;
    return i < count && gpos.u16(at) <= glyph ? at : null;
  };
}

/** Class of a glyph; 0 for all that a class table does not name. */
function classes(gpos: Bytes, start: number): (glyph: number) => number {
  if (gpos.u16(start) === 1) {
    const first = gpos.u16(start + 2);
    const count = gpos.u16(start + 4);
    return (glyph) =>
      glyph < first || glyph >= first + count ? 0 : gpos.u16(start + 6 + 2 * (glyph - first));
  }
  const rangeOf = ranges(gpos, start);
  return (glyph) => {
    const at = rangeOf(glyph);
    return at === null ? 0 : gpos.u16(at + 4);
  };
}

/**
 * Kerning from the older `kern` table: horizontal subtables of format 0, in both headers that are in use
 * (OpenType version 0 and the longer one of TrueType fonts made for Apple systems).
 */
export function tabledKerning(kern: Bytes): KernOf {
  const long = kern.u16(0) === 1;
  const count = Math.min(long ? kern.u32(4) : kern.u16(2), MOST_SUBTABLES);
  const subtables: ((left: number, right: number) => number)[] = [];
  let at = long ? 8 : 4;
  for (let i = 0; i < count; i += 1) {
    const size = long ? kern.u32(at) : kern.u16(at + 2);
    const flags = kern.u16(at + 4);
    // Bit 0 of the low byte: horizontal; the long header has bits for vertical, cross-stream, variation.
    const horizontal = long ? (flags & 0xe000) === 0 : (flags & 0x07) === 0x01;
    const format = long ? flags & 0xff : flags >> 8;
    if (horizontal && format === 0) subtables.push(sortedPairs(kern, at + (long ? 8 : 6)));
    if (size === 0) break;
    at += size;
  }
  return (left, right) => {
    let sum = 0;
    for (const subtable of subtables) sum += subtable(left, right);
    return sum;
  };
}

function sortedPairs(kern: Bytes, start: number): (left: number, right: number) => number {
  const count = kern.u16(start);
  return (left, right) => {
    const key = left * 65536 + right;
    const i = firstWhere(count, (k) => kern.u32(start + 8 + 6 * k) >= key);
    return i < count && kern.u32(start + 8 + 6 * i) === key ? kern.i16(start + 12 + 6 * i) : 0;
  };
}
