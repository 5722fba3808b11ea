import { ringsOf } from '../geometry/region.ts';
import { lineToLeft } from '../geometry/segment.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';

/** Pieces closer than this abut: well over what rounding leaves, well under a gap that a brush enters. */
export const ABUT: Mm = 0.02;

/** A straight stretch of a border; the region lies on its left. */
export interface Side {
  readonly a: Point;
  readonly b: Point;
}

/** Every straight stretch of the region's borders, openings included. */
export function sidesOf(region: Region): Side[] {
  return ringsOf(region).flatMap((ring) => ring.map((b, i) => ({ a: cyclic(ring, i - 1), b })));
}

/** The side moved out of its region by a hair: what it runs through there is what it abuts. */
export function justOutside(side: Side): Side {
  const [a, b] = lineToLeft(side.a, side.b, -ABUT);
  return { a, b };
}

/** A stretch of a side and the heights at which something stands against it there. */
export interface Against {
  readonly from: Mm;
  readonly to: Mm;
  readonly bottom: number;
  readonly top: number;
}

/**
 * Area of a wall of the given length between two heights that nothing stands against, in square millimeters.
 * Sweeps along the wall and keeps what stands there in order of its underside.
 */
export function openWall(length: Mm, bottom: number, top: number, against: readonly Against[]): number {
  if (against.length === 0) return length * (top - bottom);
  const coming = [...against].sort((a, b) => a.from - b.from);
  const stops = [0, length, ...against.flatMap(({ from, to }) => [from, to])]
    .map((stop) => Math.min(length, Math.max(0, stop)))
    .sort((s, t) => s - t);
  let here: Against[] = [];
  let next = 0;
  let area = 0;
  for (let i = 0; i + 1 < stops.length; i++) {
    const from = pick(stops, i);
    const to = pick(stops, i + 1);
    if (to - from <= SAME_LENGTH) continue;
    const middle = (from + to) / 2;
    if (here.some((other) => other.to < middle)) here = here.filter((other) => other.to >= middle);
    for (; next < coming.length; next++) {
      const other = coming[next];
      if (!other || other.from > middle) break;
      if (other.to >= middle) insert(here, other);
    }
    area += (to - from) * (top - bottom - covered(bottom, top, here));
  }
  return area;
}

/** Into a list in order of undersides; of those alike the tallest first, which hides the others at once. */
function insert(list: Against[], one: Against): void {
  let at = list.length;
  for (; at > 0; at--) {
    const before = list[at - 1];
    if (!before || before.bottom < one.bottom || (before.bottom === one.bottom && before.top >= one.top))
      break;
  }
  list.splice(at, 0, one);
}

/** How much of the heights from `bottom` to `top` is taken by the given ones in order, overlaps once. */
function covered(bottom: number, top: number, spans: readonly Against[]): number {
  let reached = bottom;
  let sum = 0;
  for (const span of spans) {
    if (reached >= top || span.bottom >= top) break;
    const from = Math.max(reached, span.bottom);
    const to = Math.min(top, span.top);
    if (to > from) {
      sum += to - from;
      reached = to;
    }
  }
  return sum;
}
