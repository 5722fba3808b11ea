import { Bytes, FontProblem } from './bytes.ts';
import { inflate } from './inflate.ts';

/** Largest font file that is read. Text fonts for signs run to some hundred kilobytes. */
export const MOST_BYTES = 8_000_000;
/** Largest sum of unpacked tables: a small packed file must not unfold into the whole memory. */
export const MOST_UNPACKED = 32_000_000;
/** Tables in a file; the OpenType specification registers fewer than sixty. */
export const MOST_TABLES = 100;

/** A font file's tables by tag, unpacked. `cff` tells which kind of outlines the file declares. */
export interface FontTables {
  readonly cff: boolean;
  readonly tables: ReadonlyMap<string, Bytes>;
}

/** What files of one font that is packed in no way begin with. */
export const PLAIN = ['\u0000\u0001\u0000\u0000', 'true', 'OTTO'];

/**
 * The tables of a TrueType, OpenType or WOFF 1 file (W3C WOFF File Format 1.0, sections 3 to 5).
 * Throws a FontProblem for anything else.
 */
export function tablesOf(data: Uint8Array): FontTables {
  if (data.length > MOST_BYTES) {
    throw new FontProblem({ code: 'too-big', bytes: data.length, most: MOST_BYTES });
  }
  if (data.length < 12) throw new FontProblem({ code: 'not-a-font' });
  const bytes = new Bytes(data, 'directory');
  const signature = bytes.tag(0);
  const woff = signature === 'wOFF';
  const flavor = woff ? bytes.tag(4) : signature;
  if (!PLAIN.includes(flavor)) {
    throw new FontProblem({ code: 'not-a-font' });
  }
  return { cff: flavor === 'OTTO', tables: woff ? woffTables(bytes) : plainTables(bytes) };
}

/** @param start where the font's directory begins, other than 0 in a collection */
export function plainTables(bytes: Bytes, start = 0): Map<string, Bytes> {
  const count = bytes.u16(start + 4);
  if (count > MOST_TABLES) bytes.damaged();
  const tables = new Map<string, Bytes>();
  for (let i = 0; i < count; i += 1) {
    const at = start + 12 + 16 * i;
    const tag = bytes.tag(at);
    tables.set(tag, new Bytes(bytes.slice(bytes.u32(at + 8), bytes.u32(at + 12), tag), tag));
  }
  return tables;
}

function woffTables(bytes: Bytes): Map<string, Bytes> {
  const count = bytes.u16(12);
  if (count > MOST_TABLES) bytes.damaged();
  const tables = new Map<string, Bytes>();
  let unpacked = 0;
  for (let i = 0; i < count; i += 1) {
    const at = 44 + 20 * i;
    const tag = bytes.tag(at);
    const packed = bytes.slice(bytes.u32(at + 4), bytes.u32(at + 8), tag);
    const size = bytes.u32(at + 12);
    unpacked += size;
    if (unpacked > MOST_UNPACKED) {
      throw new FontProblem({ code: 'too-big', bytes: unpacked, most: MOST_UNPACKED });
    }
    tables.set(tag, new Bytes(unpack(packed, size, tag), tag));
  }
  return tables;
}

/** A table is stored as it is when packing would not have made it smaller; else as a zlib stream. */
function unpack(packed: Uint8Array, size: number, tag: string): Uint8Array {
  if (packed.length === size) return packed;
  try {
    return inflate(packed.subarray(2), size);
  } catch {
    throw new FontProblem({ code: 'damaged', table: tag });
  }
}

/** A table that must be there. */
export function need(tables: ReadonlyMap<string, Bytes>, tag: string): Bytes {
  const table = tables.get(tag);
  if (!table) throw new FontProblem({ code: 'no-table', table: tag });
  return table;
}

/** A font file of the given tables. */
export function assemble(parts: readonly (readonly [string, Uint8Array])[], cff: boolean): ArrayBuffer {
  const head = 12 + 16 * parts.length;
  const size = parts.reduce((sum, [, data]) => sum + padded(data.length), head);
  const file = new Uint8Array(size);
  const view = new DataView(file.buffer);
  view.setUint32(0, cff ? 0x4f54544f : 0x00010000);
  view.setUint16(4, parts.length);
  let at = head;
  parts.forEach(([tag, data], i) => {
    const entry = 12 + 16 * i;
    for (let k = 0; k < 4; k += 1) view.setUint8(entry + k, tag.charCodeAt(k));
    view.setUint32(entry + 8, at);
    view.setUint32(entry + 12, data.length);
    file.set(data, at);
    at += padded(data.length);
  });
  return file.buffer;
}

const padded = (size: number): number => (size + 3) & ~3;
