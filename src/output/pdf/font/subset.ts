import { need } from '../../../lettering/font/tables.ts';
import { joinedBytes } from '../../../list/joinedBytes.ts';
import { type Face, outlineOffsets } from './face.ts';

/** Flags of a component of a glyph that is put together (OpenType specification, `glyf`). */
const WORDS = 0x0001;
const SCALE = 0x0008;
const MORE = 0x0020;
const TWO_SCALES = 0x0040;
const MATRIX = 0x0080;

/**
 * A TrueType font that draws these glyphs alone, under their numbers in the whole font: all others up to the
 * last are empty. It has the tables that PDF asks of an embedded one (ISO 32000-1, 9.9), and no map of
 * characters: the text of the file names glyphs.
 */
export function subsetOf(face: Face, wanted: Iterable<number>): Uint8Array {
  const kept = withComponents(face, wanted);
  const count = Math.max(0, ...kept) + 1;
  const { glyf, loca } = outlinesOf(face, kept, count);
  const copy = (tag: string) => need(face.tables, tag).data.slice();
  const put16 = (table: Uint8Array, at: number, value: number) => {
    new DataView(table.buffer).setUint16(at, value);
    return table;
  };
  return fontFile([
    ['glyf', glyf],
    // The sum of the whole file is left at zero, and offsets of outlines are long.
    ['head', put16(put16(put16(copy('head'), 8, 0), 10, 0), 50, 1)],
    ['hhea', put16(copy('hhea'), 34, count)],
    ['hmtx', metricsOf(face, kept, count)],
    ['loca', loca],
    ['maxp', put16(copy('maxp'), 4, count)],
    ...['cvt ', 'fpgm', 'prep'].flatMap((tag): [string, Uint8Array][] =>
      face.tables.has(tag) ? [[tag, copy(tag)]] : [],
    ),
  ]);
}

/** The glyphs, the one for missing characters, and all that they are put together of. */
function withComponents(face: Face, wanted: Iterable<number>): ReadonlySet<number> {
  const kept = new Set<number>();
  const open = [0, ...wanted];
  for (let glyph = open.pop(); glyph !== undefined; glyph = open.pop()) {
    if (kept.has(glyph)) continue;
    kept.add(glyph);
    open.push(...componentsOf(face, glyph));
  }
  return kept;
}

function componentsOf(face: Face, glyph: number): number[] {
  const offset = outlineOffsets(face);
  const glyf = need(face.tables, 'glyf');
  const start = offset(glyph);
  if (offset(glyph + 1) === start || glyf.i16(start) >= 0) return [];
  const found: number[] = [];
  for (let at = start + 10, flags = MORE; flags & MORE; ) {
    flags = glyf.u16(at);
    found.push(glyf.u16(at + 2));
    const scaled = flags & SCALE ? 2 : flags & TWO_SCALES ? 4 : flags & MATRIX ? 8 : 0;
    at += 4 + (flags & WORDS ? 4 : 2) + scaled;
  }
  return found;
}

function outlinesOf(face: Face, kept: ReadonlySet<number>, count: number) {
  const offset = outlineOffsets(face);
  const whole = need(face.tables, 'glyf');
  const parts: Uint8Array[] = [];
  const loca = new DataView(new ArrayBuffer(4 * (count + 1)));
  let used = 0;
  for (let glyph = 0; glyph < count; glyph++) {
    loca.setUint32(4 * glyph, used);
    if (!kept.has(glyph)) continue;
    const outline = padded(whole.slice(offset(glyph), offset(glyph + 1) - offset(glyph)));
    parts.push(outline);
    used += outline.length;
  }
  loca.setUint32(4 * count, used);
  return { glyf: joinedBytes(parts), loca: new Uint8Array(loca.buffer) };
}

function metricsOf(face: Face, kept: ReadonlySet<number>, count: number): Uint8Array {
  const whole = need(face.tables, 'hmtx');
  const full = need(face.tables, 'hhea').u16(34);
  const out = new DataView(new ArrayBuffer(4 * count));
  for (const glyph of kept) {
    out.setUint16(4 * glyph, whole.u16(4 * Math.min(glyph, full - 1)));
    const bearing = glyph < full ? 4 * glyph + 2 : 4 * full + 2 * (glyph - full);
    out.setInt16(4 * glyph + 2, whole.i16(bearing));
  }
  return new Uint8Array(out.buffer);
}

/** To a whole number of four bytes, as tables and outlines begin. */
function padded(bytes: Uint8Array): Uint8Array {
  const out = new Uint8Array(Math.ceil(bytes.length / 4) * 4);
  out.set(bytes);
  return out;
}

const TRUETYPE = 0x00010000;

/** A file of these tables, with its directory (OpenType specification, "Organization of an OpenType font"). */
function fontFile(tables: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  const sorted = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const head = new DataView(new ArrayBuffer(12 + 16 * sorted.length));
  const power = Math.floor(Math.log2(sorted.length));
  head.setUint32(0, TRUETYPE);
  head.setUint16(4, sorted.length);
  head.setUint16(6, 16 * 2 ** power);
  head.setUint16(8, power);
  head.setUint16(10, 16 * (sorted.length - 2 ** power));
  let offset = head.byteLength;
  const bodies = sorted.map(([tag, table], i) => {
    const body = padded(table);
    const at = 12 + 16 * i;
    for (let k = 0; k < 4; k++) head.setUint8(at + k, tag.charCodeAt(k));
    head.setUint32(at + 4, sumOf(body));
    head.setUint32(at + 8, offset);
    head.setUint32(at + 12, table.length);
    offset += body.length;
    return body;
  });
  return joinedBytes([new Uint8Array(head.buffer), ...bodies]);
}

/** Sum of a table's 32-bit words. */
function sumOf(body: Uint8Array): number {
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength);
  let sum = 0;
  for (let at = 0; at < body.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}
