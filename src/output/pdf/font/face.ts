import type { Bytes } from '../../../lettering/font/bytes.ts';
import { characterMap } from '../../../lettering/font/characters.ts';
import { type FontTables, need, tablesOf } from '../../../lettering/font/tables.ts';
import { codeAt } from '../../../list/at.ts';
import { singleSubstitutes } from './substitutes.ts';

/** A font file with TrueType outlines, as a PDF embeds it. */
export interface Face {
  /** As it is named in the PDF, such as `Barlow-Bold`. */
  readonly name: string;
  readonly tables: FontTables['tables'];
  /** Glyph of a character, 0 where the font has none; figures are those that are all of one width. */
  readonly glyphOf: (char: string) => number;
  /** In thousandths of the em. */
  readonly advanceOf: (glyph: number) => number;
}

/** Both weights of the typeface that sheets are set in. */
export interface Typeface {
  readonly regular: Face;
  readonly bold: Face;
}

/** Which files they are, within the package `@fontsource/barlow`. */
export const TYPEFACE_FILES = {
  regular: 'files/barlow-latin-400-normal.woff',
  bold: 'files/barlow-latin-700-normal.woff',
} as const;

/** Reads both files; throws a `FontProblem` where one is no TrueType font. */
export const typefaceOf = (files: Readonly<Record<keyof Typeface, Uint8Array>>): Typeface => ({
  regular: faceOf(files.regular, 'Barlow-Regular'),
  bold: faceOf(files.bold, 'Barlow-Bold'),
});

function faceOf(bytes: Uint8Array, name: string): Face {
  const { tables } = tablesOf(bytes);
  const mapped = characterMap(need(tables, 'cmap'));
  const gsub = tables.get('GSUB');
  const tabular = gsub ? singleSubstitutes(gsub, 'tnum') : (glyph: number) => glyph;
  const perEm = need(tables, 'head').u16(18);
  const metrics = need(tables, 'hmtx');
  const last = need(tables, 'hhea').u16(34) - 1;
  return {
    name,
    tables,
    glyphOf: (char) => tabular(mapped(codeAt(char))),
    advanceOf: (glyph) => Math.round((metrics.u16(4 * Math.min(glyph, last)) * 1000) / perEm),
  };
}

/** Offsets of the glyphs within the outlines, one more than there are glyphs (OpenType specification, `loca`). */
export function outlineOffsets(face: Face): (glyph: number) => number {
  const loca: Bytes = need(face.tables, 'loca');
  const long = need(face.tables, 'head').i16(50) === 1;
  return (glyph) => (long ? loca.u32(4 * glyph) : 2 * loca.u16(2 * glyph));
}
