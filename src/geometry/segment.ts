import type { Mm } from '../measure/units.ts';
import { add, cross, distance, dot, leftNormal, lerp, scale, subtract } from './point.ts';
import type { Point } from './shape.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** Sine below which two directions count as parallel: `SAME_LENGTH` over a meter. */
const PARALLEL = SAME_LENGTH / 1000;

/** Share along `a`–`b` at which the line through `c` and `d` meets it; null when parallel or without length. */
function shareAlong(a: Point, b: Point, c: Point, d: Point): number | null {
  const along = subtract(b, a);
  const other = subtract(d, c);
  const turn = cross(along, other);
  const lengths = distance(a, b) * distance(c, d);
  if (lengths === 0 || Math.abs(turn) <= PARALLEL * lengths) return null;
  return cross(subtract(c, a), other) / turn;
}

/** Where the infinite lines through `a`, `b` and through `c`, `d` meet; null when they are parallel. */
export function intersectLines(a: Point, b: Point, c: Point, d: Point): Point | null {
  const t = shareAlong(a, b, c, d);
  return t === null ? null : lerp(a, b, t);
}

/** The line from `a` to `b` moved to its left. */
export function lineToLeft(a: Point, b: Point, by: Mm): readonly [Point, Point] {
  const out = scale(leftNormal(subtract(b, a)), by);
  return [add(a, out), add(b, out)];
}

/** Where two segments meet, their ends within `SAME_LENGTH` counted in; null when apart or parallel. */
export function intersectSegments(a: Point, b: Point, c: Point, d: Point): Point | null {
  const t = shareAlong(a, b, c, d);
  const u = shareAlong(c, d, a, b);
  if (t === null || u === null) return null;
  const within = (share: number, size: Mm) =>
    share * size >= -SAME_LENGTH && (share - 1) * size <= SAME_LENGTH;
  return within(t, distance(a, b)) && within(u, distance(c, d)) ? lerp(a, b, t) : null;
}

/** The place of the segment from `a` to `b` that is nearest to `p`. */
export function nearestOnSegment(p: Point, a: Point, b: Point): Point {
  const along = subtract(b, a);
  const square = dot(along, along);
  if (square === 0) return a;
  return lerp(a, b, Math.max(0, Math.min(1, dot(subtract(p, a), along) / square)));
}

/** Shortest distance from `p` to the segment from `a` to `b`. */
export const distanceToSegment = (p: Point, a: Point, b: Point): Mm => distance(p, nearestOnSegment(p, a, b));
