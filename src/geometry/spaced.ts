import { cyclic, pick } from '../list/at.ts';
import { wholeUp } from '../measure/round.ts';
import type { Deg, Mm } from '../measure/units.ts';
import { alongRing } from './along.ts';
import { subtract, turnBetween } from './point.ts';
import type { Point, Ring } from './shape.ts';

/** What turns more than this between two sides is a corner; chords of curves turn less. */
const CORNER: Deg = 22.5;

/**
 * Points along a border, one at each corner and the rest evenly between corners, so that none is farther from the next
 * along the border than `spacing`. A border without corners is divided as a whole, into three at least.
 */
export function spacedAlong(ring: Ring, spacing: Mm): Point[] {
  const { length, corners: places, at } = alongRing(ring);
  const corners = places.filter((_, i) => isCorner(ring, i));
  const least = corners.length > 0 ? 1 : 3;
  const starts = corners.length > 0 ? corners : [0];
  return starts.flatMap((from, i) => {
    const way = i + 1 < starts.length ? pick(starts, i + 1) - from : pick(starts, 0) + length - from;
    const count = Math.max(least, wholeUp(way / spacing));
    return Array.from({ length: count }, (_, k) => at(from + (k * way) / count));
  });
}

function isCorner(ring: Ring, i: number): boolean {
  const here = cyclic(ring, i);
  const turn = turnBetween(subtract(here, cyclic(ring, i - 1)), subtract(cyclic(ring, i + 1), here));
  return Math.abs(turn) > CORNER;
}
