import { transformPath } from '../geometry/path.ts';
import type { Path } from '../geometry/shape.ts';
import { codeAt } from '../list/at.ts';
import { type Bytes, FontProblem, type FontReason } from './font/bytes.ts';
import { capsOf } from './font/caps.ts';
import { characterMap } from './font/characters.ts';
import { type Form, formOf } from './font/form.ts';
import { type KernOf, positionedKerning, tabledKerning } from './font/kerning.ts';
import { type FontFeature, featuresIn, fileToShape, rulesOf } from './font/layout.ts';
import { outlinesOf } from './font/outlines.ts';
import { type FontTables, need, tablesOf } from './font/tables.ts';
import type { Shape, Shaper } from './shaping/shape.ts';

export type { FontReason } from './font/bytes.ts';

/**
 * A font as lettering uses it. What it draws is told by a key: a character by itself, one glyph a code point, or a form that
 * `shape` put together (`font/form.ts`).
 * All lengths are font units; scale = wanted cap height / `capHeight`.
 */
export interface Font {
  readonly name: string;
  readonly unitsPerEm: number;
  /** Height of flat capitals, measured on their outlines: what a sign maker's ruler would say. */
  readonly capHeight: number;
  /** Where they stand over the font's zero line; below 0 where they dip under it. */
  readonly foot: number;
  readonly has: (key: string) => boolean;
  readonly advance: (key: string) => number;
  /** Added to the advance of `left` when `right` follows; 0 beside forms, which were kerned as they were shaped. */
  readonly kern: (left: string, right: string) => number;
  /** Closed contours, y up, origin at the left end of the baseline. Empty for spaces. */
  readonly outline: (key: string) => Path;
  /** Sets letters together; null where the font was read without what does so. */
  readonly shape: Shape | null;
  /** What it has to draw letters in other forms by. */
  readonly features: () => readonly FontFeature[];
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
export function readFont(
  bytes: ArrayBuffer | Uint8Array,
  name: string,
  shaper: Shaper | null = null,
): ReadFont {
  try {
    const data = bytes instanceof Uint8Array ? bytes : new Uint8Array(bytes);
    return { ok: true, font: fontOf(tablesOf(data), name, shaper) };
  } catch (error) {
    // Anything but our own problem comes from the outline library stumbling over damaged outlines.
    const reason: FontReason =
      error instanceof FontProblem ? error.reason : { code: 'damaged', table: 'outlines' };
    return { ok: false, reason };
  }
}

function fontOf({ cff, tables }: FontTables, name: string, shaper: Shaper | null): Font {
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

  const drawn = (glyph: number): Path | null => (glyph > 0 && glyph < glyphs ? outlineOf(glyph) : null);
  const found = new Map<string, Found>();
  const find = (key: string): Found => {
    const known = found.get(key);
    if (known) return known;
    const form = formOf(key);
    const record = form ? foundForm(form, drawn) : foundGlyph(within(() => glyphOf(codeAt(key)), 0));
    found.set(key, record);
    return record;
  };
  const foundGlyph = (glyph: number): Found => {
    const path = drawn(glyph);
    return path ? { glyph, advance: advanceOf(glyph), path } : { glyph: 0, advance: advanceOf(0), path: [] };
  };

  const font = {
    name,
    unitsPerEm,
    has: (key: string) => find(key).glyph !== 0,
    advance: (key: string) => find(key).advance,
    kern: (left: string, right: string) => {
      const [a, b] = [find(left).glyph, find(right).glyph];
      return a === 0 || b === 0 || a === FORM || b === FORM ? 0 : kernOf(a, b);
    },
    outline: (key: string) => find(key).path,
    shape: shaper?.(() => fileToShape({ cff, tables }), rulesOf(tables, glyphOf, kernOf)) ?? null,
    features: () => featuresIn(tables),
  };
  const caps = capsOf(font.outline, tables.get('OS/2'), unitsPerEm);
  return { ...font, capHeight: caps.height, foot: caps.foot };
}

/** What is drawn for a key; `glyph` is 0 where the font has none that can be drawn. */
interface Found {
  readonly glyph: number;
  readonly advance: number;
  readonly path: Path;
}

/** In the place of the one glyph of a character. */
const FORM = -1;

/** One that lacks a glyph is missing as a whole. */
function foundForm({ advance, glyphs }: Form, drawn: (glyph: number) => Path | null): Found {
  const paths = glyphs.map(({ glyph, x, y }) => {
    const path = drawn(glyph);
    return path && transformPath(path, (p) => ({ x: p.x + x, y: p.y + y }));
  });
  const whole = paths.every((path) => path !== null);
  return { glyph: whole ? FORM : 0, advance, path: paths.flatMap((path) => path ?? []) };
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
