import { cyclic } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { distance } from './point.ts';
import { distanceToSegment } from './segment.ts';
import type { Box, Point, Quad, Ring } from './shape.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** Farther than this outside of a side's box no point lies on the side, however its distance is rounded. */
const NEAR: Mm = 2 * SAME_LENGTH;

/** Calls `visit` for every side of a closed ring, the last one back to the first point. */
export function eachSide(ring: Ring, visit: (a: Point, b: Point) => void): void {
  let before = ring[ring.length - 1];
  for (const point of ring) {
    if (before) visit(before, point);
    before = point;
  }
}

/**
 * Area in square millimeters by the trapezoid sum, positive when counterclockwise. Taken about the first
 * point, so that small rings far from the origin keep their digits.
 */
export function signedArea(ring: Ring): number {
  const origin = ring[0];
  if (!origin) return 0;
  let twice = 0;
  eachSide(ring, (a, b) => {
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  });
  return twice / 2;
}

export function perimeter(ring: Ring): Mm {
  let sum = 0;
  eachSide(ring, (a, b) => {
    sum += distance(a, b);
  });
  return sum;
}

/** Smallest box around the points; of no points, the empty box at the origin. */
export function boxOfPoints(points: readonly Point[]): Box {
  if (points.length === 0) return { x: 0, y: 0, w: 0, h: 0 };
  let left = Number.POSITIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  for (const { x, y } of points) {
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < bottom) bottom = y;
    if (y > top) top = y;
  }
  return { x: left, y: bottom, w: right - left, h: top - bottom };
}

/** Center of the area; of a ring without area, the mean of its points. */
export function centroidOfRing(ring: Ring): Point {
  const origin = ring[0];
  if (!origin) return { x: 0, y: 0 };
  let twice = 0;
  let sx = 0;
  let sy = 0;
  eachSide(ring, (p, q) => {
    const a = { x: p.x - origin.x, y: p.y - origin.y };
    const b = { x: q.x - origin.x, y: q.y - origin.y };
    const part = a.x * b.y - b.x * a.y;
    twice += part;
    sx += (a.x + b.x) * part;
    sy += (a.y + b.y) * part;
  });
  if (Math.abs(twice) > SAME_LENGTH * SAME_LENGTH) {
    return { x: origin.x + sx / (3 * twice), y: origin.y + sy / (3 * twice) };
  }
  let mx = 0;
  let my = 0;
  for (const p of ring) {
    mx += p.x;
    my += p.y;
  }
  return { x: mx / ring.length, y: my / ring.length };
}

/**
 * The integral of x times y over the area, about its center: of one sign for a shape and of the other for its image in a
 * mirror, none where one side of the shape is the image of the other.
 */
export function productOfInertia(ring: Ring): number {
  const center = centroidOfRing(ring);
  let sum = 0;
  eachSide(ring, (p, q) => {
    const [ax, ay, bx, by] = [p.x - center.x, p.y - center.y, q.x - center.x, q.y - center.y];
    sum += (ax * by - bx * ay) * (ax * by + 2 * ax * ay + 2 * bx * by + bx * ay);
  });
  return (Math.sign(signedArea(ring)) * sum) / 24;
}

/** The same ring walked the other way, from the same first point. */
export function reverseRing(ring: Ring): Ring {
  const [first, ...rest] = ring;
  return first ? [first, ...rest.reverse()] : ring;
}

/** The corners of a ring from one of them on to another, both of them included. */
export function betweenCorners(ring: Ring, from: Point, to: Point): Point[] {
  const first = ring.indexOf(from);
  const count = (ring.indexOf(to) - first + ring.length) % ring.length;
  return Array.from({ length: count + 1 }, (_, i) => cyclic(ring, first + i));
}

/** Whether `p` lies inside or on the ring (even-odd for rings that cross themselves). */
export function containsPoint(ring: Ring, p: Point): boolean {
  let inside = false;
  let a = ring[ring.length - 1];
  const [above, below] = [p.y + NEAR, p.y - NEAR];
  for (const b of ring) {
    // Most sides lie all above or all below: they neither hold the place nor are crossed beside it.
    if (a && !((a.y > above && b.y > above) || (a.y < below && b.y < below))) {
      if (isOnSide(p, a, b)) return true;
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y)) inside = !inside;
    }
    a = b;
  }
  return inside;
}

/** Whether `p` lies on the side. Told by the side's box where it can be, since most sides are far away. */
const isOnSide = (p: Point, a: Point, b: Point): boolean =>
  p.x > Math.min(a.x, b.x) - NEAR &&
  p.x < Math.max(a.x, b.x) + NEAR &&
  p.y > Math.min(a.y, b.y) - NEAR &&
  p.y < Math.max(a.y, b.y) + NEAR &&
  distanceToSegment(p, a, b) <= SAME_LENGTH;

/** The same corners, each where a map takes it. */
export const quadThrough = ([a, b, c, d]: Quad, to: (p: Point, corner: number) => Point): Quad => [
  to(a, 0),
  to(b, 1),
  to(c, 2),
  to(d, 3),
];
