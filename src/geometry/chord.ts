import { at } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { distance, subtract } from './point.ts';
import { ringsOf } from './region.ts';
import type { Point, Region } from './shape.ts';

/**
 * Stretches of the segment from `a` to `b` inside a region, as distances from `a`, in order. Quick: counts
 * borders crossed along the line. What runs along a border may fall to either side; for that, and for lines
 * with corners, take `clipPolyline`.
 */
export function chordsInside(a: Point, b: Point, region: Region): [Mm, Mm][] {
  const size = distance(a, b);
  if (size === 0) return [];
  const along = subtract(b, a);
  const shares: number[] = [];
  /** To the left of the line where it is more than 0. */
  const sideOf = (p: Point): number => along.x * (p.y - a.y) - along.y * (p.x - a.x);
  for (const ring of ringsOf(region)) {
    let before = ring[ring.length - 1];
    if (!before) continue;
    let from = sideOf(before);
    for (const point of ring) {
      const to = sideOf(point);
      // A corner on the line counts to one side only, so that crossings come in pairs.
      if (from > 0 !== to > 0) {
        const t = from / (from - to);
        const x = before.x + (point.x - before.x) * t - a.x;
        const y = before.y + (point.y - before.y) * t - a.y;
        shares.push((x * along.x + y * along.y) / (size * size));
      }
      before = point;
      from = to;
    }
  }
  shares.sort((s, t) => s - t);
  const chords: [Mm, Mm][] = [];
  for (let i = 0; i + 1 < shares.length; i += 2) {
    const from = Math.max(0, at(shares, i));
    const to = Math.min(1, at(shares, i + 1));
    if (to > from) chords.push([from * size, to * size]);
  }
  return chords;
}
