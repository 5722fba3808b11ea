import { distance, lerp } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import { DUST } from '../geometry/tolerance.ts';
import { lastOf, pick } from '../list/at.ts';
import { type Deg, degrees, type Mm } from '../measure/units.ts';

/** A turn sharper than this is a corner, and a corner wants a fastener of its own. */
const CORNER: Deg = 30;
/** More than this along one line is no spacing but a slip of the pen, and would take forever to place. */
const MOST_ALONG = 200;

export const lengthOf = (line: readonly Point[]): Mm =>
  line.reduce((sum, p, i) => sum + (i === 0 ? 0 : distance(pick(line, i - 1), p)), 0);

/** The point at distance `along` from the start of the line. */
export function pointAt(line: readonly Point[], along: Mm): Point {
  let left = along;
  for (let i = 1; i < line.length; i++) {
    const a = pick(line, i - 1);
    const b = pick(line, i);
    const step = distance(a, b);
    if (left <= step && step > 0) return lerp(a, b, left / step);
    left -= step;
  }
  return lastOf(line);
}

/**
 * Even places along an open line of this length, one at each end and none farther apart than `spacing`, unless
 * that brings them nearer than `apart`; 200 at most. One in the middle does where it is shorter than `single`.
 */
export function alongOf(length: Mm, spacing: Mm, single: Mm, apart: Mm): Mm[] {
  if (length < single) return [length / 2];
  const most = Math.min(MOST_ALONG - 1, Math.floor(length / apart + DUST));
  const gaps = Math.max(1, Math.min(most, Math.ceil(length / spacing - DUST)));
  return Array.from({ length: gaps + 1 }, (_, i) => (length * i) / gaps);
}

/** The line less `by` at each end; its middle alone where that leaves nothing. */
export function trimEnds(line: readonly Point[], by: Mm): Point[] {
  const length = lengthOf(line);
  if (by <= 0) return [...line];
  if (length <= 2 * by) return [pointAt(line, length / 2)];
  const kept: Point[] = [pointAt(line, by)];
  let along = 0;
  line.forEach((p, i) => {
    along += i === 0 ? 0 : distance(pick(line, i - 1), p);
    if (along > by && along < length - by) kept.push(p);
  });
  return [...kept, pointAt(line, length - by)];
}

function turnAt(a: Point, b: Point, c: Point): Deg {
  const before = Math.atan2(b.y - a.y, b.x - a.x);
  const after = Math.atan2(c.y - b.y, c.x - b.x);
  const turn = Math.abs(degrees(after - before)) % 360;
  return Math.min(turn, 360 - turn);
}

/** A line cut into its smooth stretches. */
export function atCorners(line: readonly Point[]): Point[][] {
  const stretches: Point[][] = [];
  let current: Point[] = [];
  line.forEach((p, i) => {
    current.push(p);
    const before = line[i - 1];
    const after = line[i + 1];
    if (before && after && turnAt(before, p, after) > CORNER) {
      stretches.push(current);
      current = [p];
    }
  });
  return current.length > 1 ? [...stretches, current] : stretches;
}
