import { cross, dot, midpoint, subtract, unit } from '../geometry/point.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import { cyclic } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { type Bar, TOUCH, toBar } from './bar.ts';

/** Wood that shares less of a side than this only has its slanted end beside it. */
const LEAST: Mm = 1;

/** What an end lies against without having been cut to it. */
export interface Touch {
  readonly other: Bar;
  /** On the long side of the other, which so runs through, or end to end. */
  readonly on: 'side' | 'end';
  readonly at: Point;
}

/** The first of the bars that the side `p`–`q` of an outline lies against over some of its length. */
export function touchOf(p: Point, q: Point, others: readonly Bar[]): Touch | null {
  for (const other of others) {
    const a = toBar(other, p);
    const b = toBar(other, q);
    const half = other.width / 2;
    const alongSide = [half, -half].some((y) => Math.abs(a.y - y) <= TOUCH && Math.abs(b.y - y) <= TOUCH);
    if (alongSide && sharedLength(a.x, b.x, 0, other.length) > LEAST) {
      return { other, on: 'side', at: midpoint(p, q) };
    }
    const atEnd = [0, other.length].some((x) => Math.abs(a.x - x) <= TOUCH && Math.abs(b.x - x) <= TOUCH);
    if (atEnd && sharedLength(a.y, b.y, -half, half) > TOUCH) return { other, on: 'end', at: midpoint(p, q) };
  }
  return null;
}

const sharedLength = (a: number, b: number, low: number, high: number): number =>
  Math.min(Math.max(a, b), high) - Math.max(Math.min(a, b), low);

/** Longest stretch over which a side of one outline lies against a side of the other. */
export function sharedSide(a: Ring, b: Ring): Mm {
  let longest = 0;
  for (const [p, q] of sidesOf(a)) {
    const along = unit(subtract(q, p));
    for (const [r, s] of sidesOf(b)) {
      const [from, to] = [subtract(r, p), subtract(s, p)];
      if (Math.abs(cross(along, from)) > TOUCH || Math.abs(cross(along, to)) > TOUCH) continue;
      const length = Math.hypot(q.x - p.x, q.y - p.y);
      longest = Math.max(longest, sharedLength(dot(along, from), dot(along, to), 0, length));
    }
  }
  return longest;
}

const sidesOf = (ring: Ring): (readonly [Point, Point])[] =>
  ring.map((p, i) => [p, cyclic(ring, i + 1)] as const);
