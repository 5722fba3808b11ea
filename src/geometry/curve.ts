import { lastOf } from '../list/at.ts';
import { type Deg, degrees, type Mm } from '../measure/units.ts';
import { distance } from './point.ts';
import type { Path, PathCommand, Point, Ring } from './shape.ts';
import { FLATNESS, SAME_LENGTH } from './tolerance.ts';

/** One contour of a flattened path. */
export interface Contour {
  readonly points: Point[];
  readonly closed: boolean;
}

/** A quadratic curve as the cubic that runs through the same points at the same pace. */
export function quadraticToCubic(from: Point, handle: Point, to: Point): PathCommand {
  return {
    op: 'C',
    x1: from.x + (2 / 3) * (handle.x - from.x),
    y1: from.y + (2 / 3) * (handle.y - from.y),
    x2: to.x + (2 / 3) * (handle.x - to.x),
    y2: to.y + (2 / 3) * (handle.y - to.y),
    x: to.x,
    y: to.y,
  };
}

/** One coordinate of a cubic at share `t`. */
function cubicAt(a: number, b: number, c: number, d: number, t: number): number {
  const s = 1 - t;
  return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
}

export const cubicPoint = (from: Point, h1: Point, h2: Point, to: Point, t: number): Point => ({
  x: cubicAt(from.x, h1.x, h2.x, to.x, t),
  y: cubicAt(from.y, h1.y, h2.y, to.y, t),
});

/** Shares strictly inside a cubic where it is farthest to a side: zeros of the derivative of either coordinate. */
export const turnsOfCubic = (from: Point, h1: Point, h2: Point, to: Point): number[] => [
  ...turnsAlong(from.x, h1.x, h2.x, to.x),
  ...turnsAlong(from.y, h1.y, h2.y, to.y),
];

function turnsAlong(a: number, b: number, c: number, d: number): number[] {
  const q2 = d - 3 * c + 3 * b - a;
  const q1 = 2 * (c - 2 * b + a);
  const q0 = b - a;
  const inside = (t: number) => t > 0 && t < 1;
  if (q2 === 0) return q1 === 0 ? [] : [-q0 / q1].filter(inside);
  const under = q1 * q1 - 4 * q2 * q0;
  if (under < 0) return [];
  // The larger root first, the other by their product: no digits lost when q2 is small.
  const big = -(q1 + Math.sign(q1 || 1) * Math.sqrt(under)) / 2;
  return [big / q2, big === 0 ? 0 : q0 / big].filter(inside);
}

/**
 * Chords needed so that a cubic stays within `tolerance` of them: a chord over 1/n of the share strays at
 * most |f''| / (8 n2), and |f''| is at most 6 times the larger second difference of the handles.
 */
export function chordsOfCubic(p0: Point, p1: Point, p2: Point, p3: Point, tolerance: Mm): number {
  const bend = (a: Point, b: Point, c: Point) => Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y);
  const most = Math.max(bend(p0, p1, p2), bend(p1, p2, p3));
  return Math.min(1000, Math.max(1, Math.ceil(Math.sqrt((6 * most) / (8 * tolerance)))));
}

function flattenCubic(from: Point, c: Extract<PathCommand, { op: 'C' }>, tolerance: Mm, into: Point[]): void {
  const h1 = { x: c.x1, y: c.y1 };
  const h2 = { x: c.x2, y: c.y2 };
  const to = { x: c.x, y: c.y };
  const chords = chordsOfCubic(from, h1, h2, to, tolerance);
  for (let i = 1; i < chords; i++) {
    into.push(cubicPoint(from, h1, h2, to, i / chords));
  }
  into.push(to);
}

/**
 * The path as straight lines that stray from it by `tolerance` at most. Repeated points are dropped, and
 * in closed contours the first point is not repeated at the end.
 */
export function flattenPath(path: Path, tolerance: Mm = FLATNESS): Contour[] {
  const contours: Contour[] = [];
  let points: Point[] = [];
  let start: Point = { x: 0, y: 0 };
  const finish = (closed: boolean) => {
    const clean = withoutRepeats(points, closed);
    if (clean.length > 1) contours.push({ points: clean, closed });
    points = [];
  };
  for (const command of path) {
    if (command.op === 'Z') {
      finish(true);
    } else if (command.op === 'M') {
      finish(false);
      start = { x: command.x, y: command.y };
      points = [start];
    } else {
      // Drawing on after a close goes on from where that contour began.
      if (points.length === 0) points = [start];
      const from = lastOf(points);
      if (command.op === 'L') points.push({ x: command.x, y: command.y });
      else flattenCubic(from, command, tolerance, points);
    }
  }
  finish(false);
  return contours;
}

function withoutRepeats(points: readonly Point[], closed: boolean): Point[] {
  const kept: Point[] = [];
  for (const p of points) {
    const last = kept[kept.length - 1];
    if (!last || distance(last, p) > SAME_LENGTH) kept.push(p);
  }
  const [first, last] = [kept[0], kept[kept.length - 1]];
  if (closed && first && last && kept.length > 1 && distance(first, last) <= SAME_LENGTH) kept.pop();
  return kept;
}

/** Contours as rings, open ones closed by a straight line; contours without area are left out. */
export const ringsOfContours = (contours: readonly Contour[]): Ring[] =>
  contours
    .map(({ points, closed }) => (closed ? points : withoutRepeats(points, true)))
    .filter((ring) => ring.length >= 3);

/** The contours of a path as rings. */
export const ringsOfPath = (path: Path, tolerance: Mm = FLATNESS): Ring[] =>
  ringsOfContours(flattenPath(path, tolerance));

/** Angle of the longest chord that strays from a circle by `tolerance` at most: sagitta = r (1 - cos(a/2)). */
export function chordAngle(radius: Mm, tolerance: Mm): Deg {
  if (radius <= tolerance) return 90;
  return Math.min(90, degrees(2 * Math.acos(1 - tolerance / radius)));
}

/** Radius of the circle over a chord that rises by `rise` over its middle: (w2 / 4 + s2) / 2s. */
export const segmentRadius = (width: Mm, rise: Mm): Mm => ((width * width) / 4 + rise * rise) / (2 * rise);
