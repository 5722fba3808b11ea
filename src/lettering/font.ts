import type { Path } from '../geometry/shape.ts';
import { codeAt } from '../list/at.ts';
import { type Bytes, FontProblem, type FontReason } from './font/bytes.ts';
import { capsOf } from './font/caps.ts';
import { characterMap } from './font/characters.ts';
import { type KernOf, positionedKerning, tabledKerning } from './font/kerning.ts';
import { outlinesOf } from './font/outlines.ts';
import { type FontTables, need, tablesOf } from './font/tables.ts';

export type { FontReason } from './font/bytes.ts';

/**
 * A font as lettering uses it: one glyph a code point, laid out from left to right. No ligatures,
 * alternates or joining scripts: letters on a sign stand alone.
 * All lengths are font units; scale = wanted cap height / `capHeight`.
 */
export interface Font {
  readonly name: string;
  readonly unitsPerEm: number;
  /** Height of flat capitals, measured on their outlines: what a sign maker's ruler would say. */
  readonly capHeight: number;
  /** Where they stand over the font's zero line; below 0 where they dip under it. */
  readonly foot: number;
  readonly has: (character: string) => boolean;
  readonly advance: (character: string) => number;
  /** Added to the advance of `left` when `right` follows. */
  readonly kern: (left: string, right: string) => number;
  /** Closed contours, y up, origin at the left end of the baseline. Empty for spaces. */
  readonly outline: (character: string) => Path;
}

export type ReadFont =
  | { readonly ok: true; readonly font: Font }
  | { readonly ok: false; readonly reason: FontReason };

/** OpenType allows 65,535 glyphs; no lettering font comes near this, and reading stays quick below it. */
const MOST_GLYPHS = 40_000;

/**
 * Reads a .ttf, .otf or .woff file (WOFF 1); what holds several fonts or is WOFF 2 has been made such before (`font/faces.ts`). Never throws and never works longer than the size of the
 * file warrants: bad, huge or hostile files come back with the reason.
 */
export function readFont(bytes: ArrayBuffer | Uint8Array, name: string): ReadFont {
  try {
    const data = bytes instanceof Uint8Array ? bytes : new Uint8Array(bytes);
    return { ok: true, font: fontOf(tablesOf(data), name) };
  } catch (error) {
    // Anything but our own problem comes from the outline library stumbling over damaged outlines.
    const reason: FontReason =
      error instanceof FontProblem ? error.reason : { code: 'damaged', table: 'outlines' };
    return { ok: false, reason };
  }
}

function fontOf({ cff, tables }: FontTables, name: string): Font {
  if (!tables.has(cff ? 'CFF ' : 'glyf')) throw new FontProblem({ code: 'no-outlines' });
  const unitsPerEm = need(tables, 'head').u16(18);
  // The OpenType specification allows 16 to 16384.
  if (unitsPerEm < 16 || unitsPerEm > 16384) throw new FontProblem({ code: 'bad-units', units: unitsPerEm });
  const glyphs = need(tables, 'maxp').u16(4);
  if (glyphs > MOST_GLYPHS) {
    throw new FontProblem({ code: 'too-many-glyphs', glyphs, most: MOST_GLYPHS });
  }
  const glyphOf = characterMap(need(tables, 'cmap'));
  const advanceOf = advances(need(tables, 'hhea'), need(tables, 'hmtx'), glyphs);
  const kernOf = remembered(kerningOf(tables));
  const outlineOf = outlinesOf(tables, cff, unitsPerEm, glyphs);

  /** Glyph of a character, 0 when the font has none that can be drawn. */
  const found = new Map<string, { glyph: number; path: Path }>();
  const find = (character: string) => {
    const known = found.get(character);
    if (known) return known;
    const code = codeAt(character);
    const glyph = within(() => glyphOf(code), 0);
    const path = glyph > 0 && glyph < glyphs ? outlineOf(glyph) : null;
    const record = path ? { glyph, path } : { glyph: 0, path: [] };
    found.set(character, record);
    return record;
  };

  const font = {
    name,
    unitsPerEm,
    has: (character: string) => find(character).glyph !== 0,
    advance: (character: string) => advanceOf(find(character).glyph),
    kern: (left: string, right: string) => {
      const [a, b] = [find(left).glyph, find(right).glyph];
      return a === 0 || b === 0 ? 0 : kernOf(a, b);
    },
    outline: (character: string) => find(character).path,
  };
  const caps = capsOf(font.outline, tables.get('OS/2'), unitsPerEm);
  return { ...font, capHeight: caps.height, foot: caps.foot };
}

/** A damaged stretch that only some characters need makes those missing, not the font unreadable. */
function within<T>(read: () => T, otherwise: T): T {
  try {
    return read();
  } catch (error) {
    if (error instanceof FontProblem) return otherwise;
    throw error;
  }
}

function advances(hhea: Bytes, hmtx: Bytes, glyphs: number): (glyph: number) => number {
  const count = Math.min(hhea.u16(34), glyphs);
  if (count === 0) hhea.damaged();
  // Glyphs after the last full record share its advance.
  hmtx.u16(4 * (count - 1));
  return (glyph) => hmtx.u16(4 * Math.min(glyph, count - 1));
}

/** `GPOS` where it has kerning, else the older table, else none. */
function kerningOf(tables: ReadonlyMap<string, Bytes>): KernOf {
  const gpos = tables.get('GPOS');
  const positioned = gpos ? within(() => positionedKerning(gpos), null) : null;
  if (positioned) return positioned;
  const kern = tables.get('kern');
  return (kern && within(() => tabledKerning(kern), null)) ?? (() => 0);
}

function remembered(kernOf: KernOf): KernOf {
  const known = new Map<number, number>();
  return (left, right) => {
    const key = left * 65536 + right;
    const value = known.get(key) ?? within(() => kernOf(left, right), 0);
    known.set(key, value);
    return value;
  };
}
