import type { Bytes } from './bytes.ts';

/** Whether the outline library may be asked for a glyph: it has no bounds of its own. */
export type Safe = (glyph: number) => boolean;

/** Far above any letter: the most elaborate ornaments have some thousand points. */
const MOST_POINTS = 20_000;
const MOST_CONTOURS = 1_000;
const MOST_COMPONENTS = 100;
const MOST_DEPTH = 6;

/** Flags of a component (OpenType specification, `glyf`). */
const WORDS = 0x0001;
const ONE_SCALE = 0x0008;
const MORE = 0x0020;
const TWO_SCALES = 0x0040;
const MATRIX = 0x0080;

/**
 * Guard of TrueType outlines: counts points through composite glyphs before they are built, since a few
 * hundred bytes of glyphs made of glyphs can stand for billions of points.
 */
export function guardTrueType(head: Bytes, loca: Bytes, glyf: Bytes, glyphs: number): Safe {
  const long = head.i16(50) !== 0;
  const startOf = (glyph: number) => (long ? loca.u32(4 * glyph) : 2 * loca.u16(2 * glyph));
  const counted = new Map<number, number>();

  const pointsOf = (glyph: number, depth: number): number => {
    const known = counted.get(glyph);
    if (known !== undefined) return known;
    if (glyph >= glyphs || depth > MOST_DEPTH) return Infinity;
    // A glyph that comes back to itself is endless; the real count replaces this below.
    counted.set(glyph, Infinity);
    const start = startOf(glyph);
    const points = start === startOf(glyph + 1) ? 0 : countAt(start, depth);
    counted.set(glyph, points);
    return points;
  };

  const countAt = (start: number, depth: number): number => {
    const contours = glyf.i16(start);
    if (contours > MOST_CONTOURS) return Infinity;
    if (contours >= 0) return contours === 0 ? 0 : glyf.u16(start + 10 + 2 * (contours - 1)) + 1;
    let points = 0;
    let at = start + 10;
    for (let i = 0; i < MOST_COMPONENTS; i += 1) {
      const flags = glyf.u16(at);
      points += pointsOf(glyf.u16(at + 2), depth + 1);
      at += 4 + (flags & WORDS ? 4 : 2);
      at += flags & ONE_SCALE ? 2 : flags & TWO_SCALES ? 4 : flags & MATRIX ? 8 : 0;
      if (!(flags & MORE)) return points;
    }
    return Infinity;
  };

  return (glyph) => pointsOf(glyph, 0) <= MOST_POINTS;
}
