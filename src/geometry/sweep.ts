import { cyclic } from '../list/at.ts';
import { union } from './clip.ts';
import { add, cross, subtract } from './point.ts';
import { regionOfRing, ringsOf, transformRegion } from './region.ts';
import type { Point, Region, Ring } from './shape.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** All places of a region moved along a straight line: its Minkowski sum with the line. */
export const sweep = (region: Region, from: Point, to: Point): Region => union(sweptPieces(region, from, to));

/**
 * What `sweep` joins: the first place of the region, and the strips that its leading borders pass over. Whatever is
 * reached later was passed by a side that faces ahead; each run of such sides goes one way across the line, so its
 * strip does not cross itself.
 */
export function sweptPieces(region: Region, from: Point, to: Point): Region[] {
  const strips: Region[] = [];
  for (const ring of ringsOf(region)) {
    for (const run of leadingRuns(ring, subtract(to, from))) {
      const there = run.map((p) => add(p, from));
      const further = run.map((p) => add(p, to)).reverse();
      strips.push(regionOfRing([...there, ...further]));
    }
  }
  return [transformRegion(region, (p) => add(p, from)), ...strips];
}

/** Runs of sides with their outside, on the right when walking, ahead. A side along the line passes over nothing. */
function leadingRuns(ring: Ring, ahead: Point): Point[][] {
  const least = SAME_LENGTH * Math.hypot(ahead.x, ahead.y);
  const leads = (i: number) => cross(subtract(at(i + 1), at(i)), ahead) < -least;
  const at = (i: number): Point => cyclic(ring, i);
  const runs: Point[][] = [];
  for (let i = 0; i < ring.length; i++) {
    // A run begins where the side before does not lead; it may go on over the ring's first point.
    if (!leads(i) || leads(i + ring.length - 1)) continue;
    const run = [at(i)];
    for (let k = i; leads(k) && run.length <= ring.length; k++) run.push(at(k + 1));
    runs.push(run);
  }
  return runs;
}
