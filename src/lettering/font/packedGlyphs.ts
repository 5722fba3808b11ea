import { at as numberAt } from '../../list/at.ts';
import { joinedBytes } from '../../list/joinedBytes.ts';
import { Bytes } from './bytes.ts';
import { Reader } from './reader.ts';

/** Glyphs as a font file has them, the places of each in 32 bits, and where each begins at its left. */
interface Glyphs {
  readonly glyf: Uint8Array;
  readonly loca: Uint8Array;
  readonly left: readonly number[];
}

const COMPOSITE = 0xffff;
/** A glyph of more points cannot be told in a font file. */
const MOST_POINTS = 65_535;

/** Glyphs that a WOFF 2 file has taken apart into streams (W3C WOFF File Format 2.0, section 5.1), put together again. */
export function glyphTables(table: Bytes): Glyphs {
  const head = new Reader(table, 2);
  const overlaps = (head.u16() & 1) === 1;
  const count = head.u16();
  head.u16();
  const sizes = Array.from({ length: 7 }, () => head.u32());
  let from = head.at;
  const [contours, points, flags, triplets, composites, boxes, programs] = sizes.map((size) => {
    from += size;
    return new Reader(new Bytes(table.slice(from - size, size), table.table));
  }) as [Reader, Reader, Reader, Reader, Reader, Reader, Reader];
  const boxed = new Bytes(boxes.take(4 * Math.floor((count + 31) / 32)), table.table);
  const overlapping = overlaps ? new Bytes(table.slice(from, (count + 7) >> 3), table.table) : null;
  const bit = (bits: Bytes, i: number) => ((bits.u8(i >> 3) >> (7 - (i & 7))) & 1) === 1;

  const parts: Uint8Array[] = [];
  const loca = new DataView(new ArrayBuffer(4 * (count + 1)));
  const left: number[] = [];
  let at = 0;
  for (let i = 0; i < count; i += 1) {
    const number = contours.u16();
    const box = bit(boxed, i) ? boxes.take(8) : null;
    let glyph: Uint8Array = new Uint8Array();
    if (number === COMPOSITE) {
      if (!box) return table.damaged();
      glyph = composite(composites, box, triplets, programs);
    } else if (number > 0) {
      const overlap = overlapping !== null && bit(overlapping, i);
      glyph = simple(number, { points, flags, triplets, programs }, box, overlap);
    } else if (box) return table.damaged();
    loca.setUint32(4 * i, at);
    left.push(glyph.length === 0 ? 0 : new DataView(glyph.buffer, glyph.byteOffset).getInt16(2));
    parts.push(glyph);
    at += glyph.length;
  }
  loca.setUint32(4 * count, at);
  return { glyf: joinedBytes(parts), loca: new Uint8Array(loca.buffer), left };
}

/** Flags of the parts of a composite glyph (OpenType 1.9, "glyf"). */
const PART = { words: 0x1, scale: 0x8, more: 0x20, two: 0x40, four: 0x80, program: 0x100 } as const;

function composite(stream: Reader, box: Uint8Array, triplets: Reader, programs: Reader): Uint8Array {
  const from = stream.at;
  let programmed = false;
  for (let more = true; more; ) {
    const flags = stream.u16();
    stream.take(2 + (flags & PART.words ? 4 : 2));
    stream.take(flags & PART.scale ? 2 : flags & PART.two ? 4 : flags & PART.four ? 8 : 0);
    programmed ||= (flags & PART.program) !== 0;
    more = (flags & PART.more) !== 0;
  }
  const parts = stream.bytes.slice(from, stream.at - from);
  return padded([
    Uint8Array.of(0xff, 0xff),
    box,
    parts,
    ...(programmed ? programOf(triplets, programs) : []),
  ]);
}

/** The length of a glyph's instructions, and they. */
function programOf(triplets: Reader, programs: Reader): [Uint8Array, Uint8Array] {
  const length = triplets.short();
  return [Uint8Array.of(length >> 8, length & 0xff), programs.take(length)];
}

interface Streams {
  readonly points: Reader;
  readonly flags: Reader;
  readonly triplets: Reader;
  readonly programs: Reader;
}

/** Flags of points in a font file. */
const POINT = { on: 0x1, shortX: 0x2, shortY: 0x4, sameX: 0x10, sameY: 0x20, overlap: 0x40 } as const;

function simple(contours: number, streams: Streams, given: Uint8Array | null, overlap: boolean): Uint8Array {
  const { points, flags, triplets, programs } = streams;
  const ends = new DataView(new ArrayBuffer(2 * contours));
  let count = 0;
  for (let i = 0; i < contours; i += 1) {
    count += points.short();
    if (count === 0 || count > MOST_POINTS) points.bytes.damaged();
    ends.setUint16(2 * i, count - 1);
  }
  const marks = new Uint8Array(count);
  const [xs, ys]: [number[], number[]] = [[], []];
  let [x, y] = [0, 0];
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < count; i += 1) {
    const flag = flags.u8();
    const [dx, dy] = stepOf(flag & 0x7f, triplets);
    [x, y] = [x + dx, y + dy];
    [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
    marks[i] =
      (flag < 0x80 ? POINT.on : 0) |
      (overlap && i === 0 ? POINT.overlap : 0) |
      told(dx, xs, POINT.shortX, POINT.sameX) |
      told(dy, ys, POINT.shortY, POINT.sameY);
  }
  const box = new DataView(new ArrayBuffer(8));
  for (const [i, value] of [x0, y0, x1, y1].entries()) box.setInt16(2 * i, value);
  return padded([
    Uint8Array.of(contours >> 8, contours & 0xff),
    given ?? new Uint8Array(box.buffer),
    new Uint8Array(ends.buffer),
    ...programOf(triplets, programs),
    marks,
    Uint8Array.from(xs),
    Uint8Array.from(ys),
  ]);
}

/** Tells a step as a font file does, in no byte, in one or in two, and gives the flags of that. */
function told(step: number, into: number[], short: number, same: number): number {
  if (step === 0) return same;
  const far = Math.abs(step);
  if (far < 256) {
    into.push(far);
    return short | (step > 0 ? same : 0);
  }
  into.push((step >> 8) & 0xff, step & 0xff);
  return 0;
}

/** A step from point to point by its flag and one to four bytes (section 5.2, table of triplets). */
function stepOf(flag: number, stream: Reader): readonly [number, number] {
  const signed = (bits: number, far: number) => (bits & 1 ? far : -far);
  const a = stream.u8();
  if (flag < 10) return [0, signed(flag, ((flag & 14) << 7) + a)];
  if (flag < 20) return [signed(flag, (((flag - 10) & 14) << 7) + a), 0];
  if (flag < 84) {
    const off = flag - 20;
    return [
      signed(flag, 1 + (off & 0x30) + (a >> 4)),
      signed(flag >> 1, 1 + ((off & 0x0c) << 2) + (a & 0x0f)),
    ];
  }
  const b = stream.u8();
  if (flag < 120) {
    const off = flag - 84;
    return [
      signed(flag, 1 + (Math.floor(off / 12) << 8) + a),
      signed(flag >> 1, 1 + (((off % 12) >> 2) << 8) + b),
    ];
  }
  const c = stream.u8();
  if (flag < 124) return [signed(flag, (a << 4) + (b >> 4)), signed(flag >> 1, ((b & 0x0f) << 8) + c)];
  return [signed(flag, (a << 8) + b), signed(flag >> 1, (c << 8) + stream.u8())];
}

/** Glyphs begin at whole words of four bytes. */
function padded(parts: readonly Uint8Array[]): Uint8Array {
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  return joinedBytes([...parts, new Uint8Array(-length & 3)]);
}

/**
 * Widths and left edges of a WOFF 2 file that leaves edges out where glyphs tell them (section 5.4), as a font file has them.
 *
 * @param metrics how many glyphs have a width of their own; those after them have that of the last
 */
export function packedMetrics(table: Bytes, metrics: number, left: readonly number[]): Uint8Array {
  const read = new Reader(table, 0);
  const flags = read.u8();
  if (metrics === 0 || metrics > left.length) table.damaged();
  const widths = Array.from({ length: metrics }, () => read.u16());
  const edges = left.map((edge, i) => ((flags >> (i < metrics ? 0 : 1)) & 1 ? edge : read.i16()));
  const made = new DataView(new ArrayBuffer(4 * metrics + 2 * (left.length - metrics)));
  edges.forEach((edge, i) => {
    if (i < metrics) made.setUint16(4 * i, numberAt(widths, i));
    made.setInt16(i < metrics ? 4 * i + 2 : 2 * metrics + 2 * i, edge);
  });
  return new Uint8Array(made.buffer);
}
