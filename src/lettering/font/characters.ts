import type { Bytes } from './bytes.ts';

/** Which glyph stands for a code point; 0 when the font has none. */
type GlyphOf = (codePoint: number) => number;

/** Encodings by preference: platform, encoding (OpenType specification, `cmap`). */
const PREFERRED: readonly (readonly [number, number])[] = [
  [3, 10],
  [0, 6],
  [0, 4],
  [3, 1],
  [0, 3],
  [0, 2],
  [0, 1],
  [0, 0],
  [3, 0],
];

/**
 * Reader of the character map, formats 4, 6 and 12. Looks a character up when asked instead of unfolding
 * the map, so that overlapping ranges of a hostile file cost nothing.
 */
export function characterMap(cmap: Bytes): GlyphOf {
  const count = cmap.u16(2);
  for (const [platform, encoding] of PREFERRED) {
    for (let i = 0; i < count; i += 1) {
      const at = 4 + 8 * i;
      if (cmap.u16(at) !== platform || cmap.u16(at + 2) !== encoding) continue;
      const start = cmap.u32(at + 4);
      const reader = READERS[cmap.u16(start)];
      if (reader) return reader(cmap, start);
    }
  }
  return cmap.damaged();
}

const READERS: Readonly<Record<number, (cmap: Bytes, start: number) => GlyphOf>> = {
  4: segments,
  6: trimmed,
  12: groups,
};

/** Least index in [0, count) for which `reached` holds; `count` when none does. */
export function firstWhere(count: number, reached: (index: number) => boolean): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (reached(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function segments(cmap: Bytes, start: number): GlyphOf {
  const count = cmap.u16(start + 6) >> 1;
  const ends = start + 14;
  const starts = ends + 2 * count + 2;
  const deltas = starts + 2 * count;
  const offsets = deltas + 2 * count;
  return (codePoint) => {
    if (codePoint > 0xffff) return 0;
    const i = firstWhere(count, (k) => cmap.u16(ends + 2 * k) >= codePoint);
    if (i === count) return 0;
    const first = cmap.u16(starts + 2 * i);
    if (codePoint < first) return 0;
    const delta = cmap.i16(deltas + 2 * i);
    const offset = cmap.u16(offsets + 2 * i);
    if (offset === 0) return (codePoint + delta) & 0xffff;
    const glyph = cmap.u16(offsets + 2 * i + offset + 2 * (codePoint - first));
    return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
  };
}

function trimmed(cmap: Bytes, start: number): GlyphOf {
  const first = cmap.u16(start + 6);
  const count = cmap.u16(start + 8);
  return (codePoint) =>
    codePoint < first || codePoint >= first + count ? 0 : cmap.u16(start + 10 + 2 * (codePoint - first));
}

function groups(cmap: Bytes, start: number): GlyphOf {
  const count = cmap.u32(start + 12);
  return (codePoint) => {
    const i = firstWhere(count, (k) => cmap.u32(start + 16 + 12 * k + 4) >= codePoint);
    if (i === count) return 0;
    const at = start + 16 + 12 * i;
    const first = cmap.u32(at);
    return codePoint < first ? 0 : cmap.u32(at + 8) + codePoint - first;
  };
}
