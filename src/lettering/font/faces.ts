import { Bytes, FontProblem, type FontReason } from './bytes.ts';
import { NAMED, nameIn } from './names.ts';
import { assemble, PLAIN, plainTables } from './tables.ts';
import { isWoff2, woff2Fonts } from './woff2.ts';

/** A font of a file, as a file of its own. */
export interface Face {
  /** As the font calls itself where it is one of several; else empty. */
  readonly name: string;
  readonly file: Uint8Array;
  /** Of a variable font: where on its axes this one lies; the file holds all of them. */
  readonly at: readonly AxisPlace[] | null;
}

export interface AxisPlace {
  readonly axis: string;
  readonly value: number;
}

export type ReadFaces =
  | { readonly ok: true; readonly faces: readonly Face[] }
  | { readonly ok: false; readonly reason: FontReason };

/** Fonts in a collection; those that ship with computers hold a dozen or two. */
const MOST_FACES = 64;

/**
 * The fonts of a file, however it is packed: those of a collection (OpenType 1.9, "Font collections"), else the file itself,
 * and of a variable font each that it names ("fvar"). Tables that fonts of a collection share stand in each of the files
 * that come of it. Whether they can be read is not looked at.
 */
export function facesIn(data: Uint8Array): ReadFaces {
  try {
    const files = isWoff2(data) ? woff2Fonts(data) : plainFonts(data);
    return { ok: true, faces: files.flatMap((file, i) => facesOf(file, files.length > 1 ? i + 1 : null)) };
  } catch (error) {
    if (error instanceof FontProblem) return { ok: false, reason: error.reason };
    throw error;
  }
}

/** The fonts of a collection, each as a file of its own; any other file as it is. */
function plainFonts(data: Uint8Array): Uint8Array[] {
  const bytes = new Bytes(data, 'directory');
  if (data.length < 12 || bytes.tag(0) !== 'ttcf') return [data];
  const count = bytes.u32(8);
  if (count === 0 || count > MOST_FACES) bytes.damaged();
  return Array.from({ length: count }, (_, i) => {
    const start = bytes.u32(12 + 4 * i);
    const parts = [...plainTables(bytes, start)].map(([tag, table]) => [tag, table.data] as const);
    return new Uint8Array(assemble(parts, bytes.tag(start) === 'OTTO'));
  });
}

/** A font, or those that it names where it is variable. One of several is told by its name. */
function facesOf(file: Uint8Array, number: number | null): Face[] {
  const bytes = new Bytes(file, 'directory');
  const plain = file.length >= 12 && PLAIN.includes(bytes.tag(0));
  const tables = plain ? plainTables(bytes) : new Map<string, Bytes>();
  const named = namedIn(tables, file);
  const name = number === null ? '' : (nameIn(tables, NAMED.whole) ?? String(number));
  return named.length > 1 ? named : [{ name, file, at: null }];
}

/** Named places of a variable font; more than so many are passed over. */
const MOST_NAMED = 100;

/** The fonts that a variable font names, each with its place on the axes (OpenType 1.9, "fvar"). */
function namedIn(tables: ReadonlyMap<string, Bytes>, file: Uint8Array): Face[] {
  const fvar = tables.get('fvar');
  if (!fvar) return [];
  const [first, axisCount, axisSize] = [fvar.u16(4), fvar.u16(8), fvar.u16(10)];
  const count = Math.min(fvar.u16(12), MOST_NAMED);
  const axes = Array.from({ length: axisCount }, (_, i) => fvar.tag(first + i * axisSize));
  const family = nameIn(tables, NAMED.typeface) ?? nameIn(tables, NAMED.family) ?? '';
  return Array.from({ length: count }, (_, i) => {
    const at = first + axisCount * axisSize + i * fvar.u16(14);
    const style = nameIn(tables, fvar.u16(at)) ?? String(i + 1);
    return {
      name: `${family} ${style}`.trim(),
      file,
      at: axes.map((axis, k) => ({ axis, value: fixed(fvar, at + 4 + 4 * k) })),
    };
  });
}

/** A number of 16 bits with as many behind the point. */
const fixed = (table: Bytes, at: number): number => table.i16(at) + table.u16(at + 2) / 65536;
