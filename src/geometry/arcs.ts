import { cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { cross, distance, dot, subtract } from './point.ts';
import type { Point } from './shape.ts';
import { FLATNESS } from './tolerance.ts';

/**
 * A corner of an outline and how its side to the next corner is bowed: the tangent of a quarter of the arc's
 * angle, as DXF has it. 0 is a straight side, 1 a half circle; more than 0 turns left.
 */
export interface BowedPoint extends Point {
  readonly bulge: number;
}

/** A circle's points are on it within this, once an area was cut on the grid of the clipper. */
const ON_CIRCLE: Mm = 2e-4;
/** Fewer chords than these may lie on a circle by chance: any three points do. */
const LEAST_CHORDS = 4;

interface Circle {
  readonly center: Point;
  readonly radius: Mm;
}

function circleThrough(a: Point, b: Point, c: Point): Circle | null {
  const ab = subtract(b, a);
  const ac = subtract(c, a);
  const twice = 2 * cross(ab, ac);
  if (Math.abs(twice) < ON_CIRCLE * ON_CIRCLE) return null;
  const bb = dot(ab, ab);
  const cc = dot(ac, ac);
  const x = (ac.y * bb - ab.y * cc) / twice;
  const y = (ab.x * cc - ac.x * bb) / twice;
  return { center: { x: a.x + x, y: a.y + y }, radius: Math.hypot(x, y) };
}

/** Whether a stretch of points lies on a circle. */
function lieOn(points: readonly Point[], from: number, to: number, { center, radius }: Circle): boolean {
  // By squares: a point of a curve is asked for each end that its arc may have.
  const least = Math.max(0, radius - ON_CIRCLE) ** 2;
  const most = (radius + ON_CIRCLE) ** 2;
  for (let i = from; i <= to; i++) {
    const { x, y } = pick(points, i);
    const square = (x - center.x) * (x - center.x) + (y - center.y) * (y - center.y);
    if (square < least || square > most) return false;
  }
  return true;
}

/** The longest square of a chord of an arc, as curves are made straight here: longer ones are sides of a drawn polygon. */
const longestSquare = (radius: Mm): number => 8 * radius * (FLATNESS + ON_CIRCLE);

/** Whether three sides in a row, the last of which ends at a point, turn the same way. */
function turnsAlike(points: readonly Point[], to: number): boolean {
  const b = pick(points, to - 2);
  const c = pick(points, to - 1);
  const side = subtract(c, b);
  const before = subtract(b, pick(points, to - 3));
  return cross(before, side) * cross(side, subtract(pick(points, to), c)) > 0;
}

/** The longest run of chords from `from` on that stands for one arc of half a turn at most; its last point, and its bulge. */
function arcFrom(
  points: readonly Point[],
  from: number,
): { readonly to: number; readonly bulge: number } | null {
  let best: { to: number; left: boolean; half: Mm; radius: Mm } | null = null;
  const first = pick(points, from);
  let longest = 0;
  let known = from;
  for (let to = from + LEAST_CHORDS; to < points.length && turnsAlike(points, to); to++) {
    const last = pick(points, to);
    for (; known < to; known++) {
      longest = Math.max(longest, distance(pick(points, known), pick(points, known + 1)) ** 2);
    }
    const middle = pick(points, from + ((to - from + 1) >> 1));
    const circle = circleThrough(first, middle, last);
    if (!circle || longest > longestSquare(circle.radius) || !lieOn(points, from, to, circle)) break;
    const chord = distance(first, last);
    const left = cross(subtract(middle, first), subtract(last, middle)) > 0;
    // Over half a turn the center lies on the side of the arc.
    const over = cross(subtract(last, first), subtract(circle.center, first)) > 0 !== left;
    if (over && chord < 2 * circle.radius - ON_CIRCLE) break;
    best = { to, left, half: chord / 2, radius: circle.radius };
  }
  if (!best) return null;
  const { to, left, half, radius } = best;
  const rise = radius - Math.sqrt(Math.max(0, radius ** 2 - half ** 2));
  return { to, bulge: (left ? 1 : -1) * (rise / half) };
}

/** No two chords of one arc turn by more, unless its radius is hardly over that of a pencil. */
const SHARP = Math.cos(Math.PI / 6);

/**
 * Where to begin a closed outline, so that no arc begins in its middle: at the sharpest corner, or, where arcs run
 * into straight sides without one, at the end of the longest side.
 */
function beginning(ring: readonly Point[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ring.length; i++) {
    const p = pick(ring, i);
    const a = subtract(p, cyclic(ring, i - 1));
    const b = subtract(cyclic(ring, i + 1), p);
    const cos = dot(a, b) / (Math.hypot(a.x, a.y) * Math.hypot(b.x, b.y) || 1);
    if (cos < least - 1e-9) {
      least = cos;
      best = i;
    }
  }
  if (least < SHARP) return best;
  const sides = ring.map((p, i) => distance(cyclic(ring, i - 1), p));
  return sides.indexOf(Math.max(...sides));
}

/**
 * The outline with its arcs told as arcs. Areas here are bounded by straight lines that stray by `FLATNESS` from
 * the curves that they stand for; where four and more in a row have their ends on one circle, an arc was meant.
 * A closed outline with an arc in it may begin at another corner than it was given by.
 */
export function withArcs(points: readonly Point[], closed: boolean): BowedPoint[] {
  const straight = () => points.map(({ x, y }) => ({ x, y, bulge: 0 }));
  if (points.length <= LEAST_CHORDS) return straight();
  const start = closed ? beginning(points) : 0;
  const turned = [...points.slice(start), ...points.slice(0, start)];
  const first = turned[0];
  const line = closed && first ? [...turned, first] : turned;
  const bowed: BowedPoint[] = [];
  for (let i = 0; i < line.length; ) {
    const p = line[i];
    if (!p) break;
    const arc = arcFrom(line, i);
    bowed.push({ x: p.x, y: p.y, bulge: arc?.bulge ?? 0 });
    i = arc ? arc.to : i + 1;
  }
  if (closed && bowed.length > 1) bowed.pop();
  return bowed.some((p) => p.bulge !== 0) ? bowed : straight();
}

/** Radius of a bowed side: chord (1 + bulge2) / 4 bulge. */
export const radiusOfBow = (a: Point, b: Point, bulge: number): Mm =>
  (distance(a, b) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
