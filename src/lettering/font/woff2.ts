import decompress from 'brotli/decompress.js';
import { pick } from '../../list/at.ts';
import { Bytes, FontProblem } from './bytes.ts';
import { glyphTables, packedMetrics } from './packedGlyphs.ts';
import { Reader } from './reader.ts';
import { assemble, MOST_BYTES, MOST_TABLES, MOST_UNPACKED, need } from './tables.ts';

/** Tags by their numbers in a directory of WOFF 2 (W3C WOFF File Format 2.0, section 4.1). */
const KNOWN =
  'cmap head hhea hmtx maxp name OS/2 post cvt  fpgm glyf loca prep CFF  VORG EBDT EBLC gasp hdmx kern LTSH PCLT VDMX vhea vmtx BASE GDEF GPOS GSUB EBSC JSTF MATH CBDT CBLC COLR CPAL SVG  sbix acnt avar bdat bloc bsln cvar fdsc feat fmtx fvar gvar hsty just lcar mort morx opbd prop trak Zapf Silf Glat Gloc Feat Sill';
const tagOf = (number: number): string => KNOWN.slice(5 * number, 5 * number + 4).padEnd(4);
const OTHER = 63;

interface Entry {
  readonly tag: string;
  /** Its bytes in the packed stream, and as a table where it is packed by itself too. */
  readonly length: number;
  readonly original: number;
  readonly packed: boolean;
}

export const isWoff2 = (data: Uint8Array): boolean =>
  data.length >= 48 && new Bytes(data, 'directory').tag(0) === 'wOF2';

/**
 * The fonts of a WOFF 2 file, each as a plain file. Throws a FontProblem where it is damaged, or unfolds into more than is
 * read.
 */
export function woff2Fonts(data: Uint8Array): Uint8Array[] {
  if (data.length > MOST_BYTES)
    throw new FontProblem({ code: 'too-big', bytes: data.length, most: MOST_BYTES });
  const bytes = new Bytes(data, 'directory');
  const read = new Reader(bytes, 48);
  const flavor = bytes.tag(4);
  const count = bytes.u16(12);
  if (count === 0 || count > MOST_TABLES) bytes.damaged();
  const entries = Array.from({ length: count }, () => entryAt(read));
  const fonts = flavor === 'ttcf' ? collected(read, count) : [entries.map((_, i) => i)];
  const size = entries.reduce((sum, { length }) => sum + length, 0);
  const original = entries.reduce((sum, entry) => sum + entry.original, 0);
  const most = Math.max(size, original);
  if (most > MOST_UNPACKED) throw new FontProblem({ code: 'too-big', bytes: most, most: MOST_UNPACKED });
  const unpacked = unfold(bytes.slice(read.at, bytes.u32(20)), size);
  let from = 0;
  const stretches = entries.map(({ tag, length }) => {
    from += length;
    return new Bytes(unpacked.subarray(from - length, from), tag);
  });
  return fonts.map((indexes) => fontOf(indexes.map((i) => [pick(entries, i), pick(stretches, i)])));
}

function unfold(packed: Uint8Array, size: number): Uint8Array {
  try {
    // A byte more than there are to be tells that there are too many; of more the library throws.
    const made = decompress(packed, size + 1);
    if (made.length === size) return made;
  } catch {
    // It throws plain errors of its own where the stream is damaged.
  }
  throw new FontProblem({ code: 'damaged', table: 'stream' });
}

function entryAt(read: Reader): Entry {
  const flags = read.u8();
  const number = flags & 63;
  const tag =
    number === OTHER ? String.fromCharCode(...Array.from({ length: 4 }, () => read.u8())) : tagOf(number);
  const version = flags >> 6;
  const original = read.base128();
  // Glyphs and their places are packed by version 0 and stand as they are by 3; all else the other way about.
  const glyphs = tag === 'glyf' || tag === 'loca';
  const packed = glyphs ? version !== 3 : version !== 0;
  if (packed && !(glyphs ? version === 0 : tag === 'hmtx' && version === 1)) read.bytes.damaged();
  return { tag, original, packed, length: packed ? read.base128() : original };
}

/** Which tables each font of a collection has (section 4.2). */
function collected(read: Reader, tables: number): number[][] {
  read.take(4);
  const count = read.short();
  if (count === 0 || count > MOST_TABLES) read.bytes.damaged();
  return Array.from({ length: count }, () => {
    const own = read.short();
    read.take(4);
    const indexes = Array.from({ length: Math.min(own, MOST_TABLES) }, () => read.short());
    if (own > MOST_TABLES || indexes.some((i) => i >= tables)) read.bytes.damaged();
    return indexes;
  });
}

/** A plain font file of tables, those that were packed by themselves made again. */
function fontOf(found: readonly (readonly [Entry, Bytes])[]): Uint8Array {
  const tables = new Map(found.map(([{ tag }, bytes]) => [tag, bytes]));
  const packed = new Set(found.flatMap(([entry]) => (entry.packed ? entry.tag : [])));
  const made = new Map<string, Uint8Array>([...tables].map(([tag, { data }]) => [tag, data]));
  if (packed.has('glyf') !== packed.has('loca')) need(tables, 'glyf').damaged();
  const glyphs = packed.has('glyf') ? glyphTables(need(tables, 'glyf')) : null;
  if (glyphs) {
    made.set('glyf', glyphs.glyf);
    made.set('loca', glyphs.loca);
    made.set('head', longPlaces(need(tables, 'head')));
  }
  if (packed.has('hmtx')) {
    if (!glyphs) return need(tables, 'hmtx').damaged();
    const metrics = need(tables, 'hhea').u16(34);
    made.set('hmtx', packedMetrics(need(tables, 'hmtx'), metrics, glyphs.left));
  }
  const cff = tables.has('CFF ') || tables.has('CFF2');
  return new Uint8Array(assemble([...made], cff));
}

/** The head of a font whose places of glyphs are numbers of 32 bits (OpenType 1.9, "head"). */
function longPlaces(head: Bytes): Uint8Array {
  head.u16(50);
  const data = Uint8Array.from(head.data);
  data[51] = 1;
  return data;
}
