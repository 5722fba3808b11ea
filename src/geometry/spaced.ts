import { at, cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { cross, distance, dot, lerp, subtract } from './point.ts';
import type { Point, Ring } from './shape.ts';

/** What turns more than this between two sides, in radians, is a corner; chords of curves turn less. */
const CORNER = Math.PI / 8;

/**
 * Points along a border, one at each corner and the rest evenly between corners, so that none is farther from the next
 * along the border than `spacing`. A border without corners is divided as a whole, into three at least.
 */
export function spacedAlong(ring: Ring, spacing: Mm): Point[] {
  const corners = ring.flatMap((_, i) => (turnAt(ring, i) > CORNER ? [i] : []));
  const starts = corners.length > 0 ? corners : [0];
  return starts.flatMap((from, i) => {
    const to = cyclic(starts, i + 1) + (i + 1 < starts.length ? 0 : ring.length);
    const stretch = Array.from({ length: to - from + 1 }, (_, k) => cyclic(ring, from + k));
    return divided(stretch, spacing, corners.length > 0 ? 1 : 3);
  });
}

function turnAt(ring: Ring, i: number): number {
  const here = cyclic(ring, i);
  const before = subtract(here, cyclic(ring, i - 1));
  const after = subtract(cyclic(ring, i + 1), here);
  return Math.abs(Math.atan2(cross(before, after), dot(before, after)));
}

/** From its first point, without its last one. */
function divided(line: readonly Point[], spacing: Mm, least: number): Point[] {
  const ends = [0];
  for (let i = 1; i < line.length; i++)
    ends.push(at(ends, i - 1) + distance(pick(line, i - 1), pick(line, i)));
  const total = at(ends, line.length - 1);
  const count = Math.max(least, Math.ceil(total / spacing - 1e-9));
  let side = 1;
  return Array.from({ length: count }, (_, k) => {
    const along = (k * total) / count;
    while (at(ends, side) < along) side++;
    const from = at(ends, side - 1);
    return lerp(pick(line, side - 1), pick(line, side), (along - from) / (at(ends, side) - from || 1));
  });
}
