/**
 * Inflate (RFC 1951) into a known number of bytes, for the tables of a WOFF file. Own, because the
 * outline library's decoder keeps on reading past the end of damaged data; this one does a bounded
 * amount of work: at most one step an output byte, one a code length, and blocks that bring nothing stop
 * with the input.
 */

/** Code lengths 0..15 turned into a canonical Huffman table: counts by length, symbols in code order. */
interface Code {
  readonly counts: Uint16Array;
  readonly symbols: Uint16Array;
}

function codeOf(lengths: readonly number[]): Code {
  const counts = new Uint16Array(16);
  for (const length of lengths) counts[length] = (counts[length] ?? 0) + 1;
  counts[0] = 0;
  const next = new Uint16Array(16);
  for (let i = 1; i < 16; i += 1) next[i] = (next[i - 1] ?? 0) + (counts[i - 1] ?? 0);
  const symbols = new Uint16Array(lengths.length);
  lengths.forEach((length, symbol) => {
    if (length === 0) return;
    const at = next[length] ?? 0;
    symbols[at] = symbol;
    next[length] = at + 1;
  });
  return { counts, symbols };
}

/** Length codes 257..285 and distance codes 0..29: base value and extra bits (RFC 1951, 3.2.5). */
const LENGTH_EXTRA = [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0];
const DISTANCE_EXTRA = [
  0, 0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13,
];
const basesOf = (extra: readonly number[], first: number): readonly number[] => {
  let base = first;
  return extra.map((bits) => {
    const value = base;
    base += 1 << bits;
    return value;
  });
};
const LENGTH_BASE = [...basesOf(LENGTH_EXTRA.slice(0, 28), 3), 258];
const DISTANCE_BASE = basesOf(DISTANCE_EXTRA, 1);
/** Order in which the lengths of the code length code are sent (RFC 1951, 3.2.7). */
const ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];

const FIXED_LITERALS = codeOf(
  Array.from({ length: 288 }, (_, i) => (i < 144 ? 8 : i < 256 ? 9 : i < 280 ? 7 : 8)),
);
const FIXED_DISTANCES = codeOf(Array.from({ length: 30 }, () => 5));

class Bits {
  private at = 0;
  private held = 0;
  private count = 0;
  private readonly data: Uint8Array;
  constructor(data: Uint8Array) {
    this.data = data;
  }

  read(count: number): number {
    while (this.count < count) {
      const byte = this.data[this.at];
      if (byte === undefined) throw new RangeError('end of data');
      this.held |= byte << this.count;
      this.count += 8;
      this.at += 1;
    }
    const value = this.held & ((1 << count) - 1);
    this.held >>>= count;
    this.count -= count;
    return value;
  }

  symbol(code: Code): number {
    let value = 0;
    let first = 0;
    let index = 0;
    for (let length = 1; length < 16; length += 1) {
      value |= this.read(1);
      const count = code.counts[length] ?? 0;
      if (value - first < count) return code.symbols[index + value - first] ?? 0;
      index += count;
      first = (first + count) << 1;
      value <<= 1;
    }
    throw new RangeError('no such code');
  }

  /** To the next byte, then that many bytes as they are. */
  bytes(): Uint8Array {
    this.held = 0;
    this.count = 0;
    const [a, b, c, d] = [0, 1, 2, 3].map((i) => this.data[this.at + i]);
    if (a === undefined || b === undefined || c === undefined || d === undefined) {
      throw new RangeError('end of data');
    }
    const length = a | (b << 8);
    if ((length ^ (c | (d << 8))) !== 0xffff) throw new RangeError('stored length');
    const from = this.at + 4;
    if (from + length > this.data.length) throw new RangeError('end of data');
    this.at = from + length;
    return this.data.subarray(from, from + length);
  }
}

function dynamicCodes(bits: Bits): { literals: Code; distances: Code } {
  const literals = bits.read(5) + 257;
  const distances = bits.read(5) + 1;
  const sent = bits.read(4) + 4;
  const first = new Array<number>(19).fill(0);
  for (let i = 0; i < sent; i += 1) first[ORDER[i] ?? 0] = bits.read(3);
  const code = codeOf(first);
  const lengths: number[] = [];
  while (lengths.length < literals + distances) {
    const symbol = bits.symbol(code);
    if (symbol < 16) {
      lengths.push(symbol);
      continue;
    }
    const last = symbol === 16 ? lengths.at(-1) : 0;
    if (last === undefined) throw new RangeError('nothing to repeat');
    const times = symbol === 16 ? 3 + bits.read(2) : symbol === 17 ? 3 + bits.read(3) : 11 + bits.read(7);
    for (let i = 0; i < times; i += 1) lengths.push(last);
  }
  if (lengths.length > literals + distances) throw new RangeError('too many lengths');
  return { literals: codeOf(lengths.slice(0, literals)), distances: codeOf(lengths.slice(literals)) };
}

/**
 * The `size` bytes that raw deflate data stands for. Throws a RangeError when the data is damaged or
 * stands for another number of bytes.
 */
export function inflate(data: Uint8Array, size: number): Uint8Array {
  const out = new Uint8Array(size);
  const bits = new Bits(data);
  let at = 0;
  for (let last = false; !last; ) {
    last = bits.read(1) === 1;
    const kind = bits.read(2);
    if (kind === 0) {
      const bytes = bits.bytes();
      out.set(bytes, at);
      at += bytes.length;
      continue;
    }
    if (kind === 3) throw new RangeError('no such block');
    const { literals, distances } =
      kind === 1 ? { literals: FIXED_LITERALS, distances: FIXED_DISTANCES } : dynamicCodes(bits);
    for (let symbol = bits.symbol(literals); symbol !== 256; symbol = bits.symbol(literals)) {
      if (symbol < 256) {
        if (at >= size) throw new RangeError('too long');
        out[at] = symbol;
        at += 1;
        continue;
      }
      const base = LENGTH_BASE[symbol - 257];
      if (base === undefined) throw new RangeError('no such length');
      const length = base + bits.read(LENGTH_EXTRA[symbol - 257] ?? 0);
      const far = bits.symbol(distances);
      const distance = (DISTANCE_BASE[far] ?? Infinity) + bits.read(DISTANCE_EXTRA[far] ?? 0);
      if (distance > at || at + length > size) throw new RangeError('outside the output');
      for (let i = 0; i < length; i += 1) out[at + i] = out[at + i - distance] ?? 0;
      at += length;
    }
  }
  if (at !== size) throw new RangeError('too short');
  return out;
}
