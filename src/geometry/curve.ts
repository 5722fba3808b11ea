import { lastOf } from '../list/at.ts';
import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';
import { angleOf, distance, subtract } from './point.ts';
import type { Box, Path, PathCommand, Point, Ring } from './shape.ts';
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

/**
 * Chords needed so that a cubic stays within `tolerance` of them: a chord over 1/n of the share strays at
 * most |f''| / (8 n2), and |f''| is at most 6 times the larger second difference of the handles.
 */
function chordsOfCubic(p0: Point, p1: Point, p2: Point, p3: Point, tolerance: Mm): number {
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
    const t = i / chords;
    const s = 1 - t;
    const w = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t] as const;
    into.push({
      x: w[0] * from.x + w[1] * h1.x + w[2] * h2.x + w[3] * to.x,
      y: w[0] * from.y + w[1] * h1.y + w[2] * h2.y + w[3] * to.y,
    });
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

/** The contours as rings, open ones closed by a straight line; contours without area are left out. */
export function ringsOfPath(path: Path, tolerance: Mm = FLATNESS): Ring[] {
  return flattenPath(path, tolerance)
    .map((contour) => withoutRepeats(contour.points, true))
    .filter((ring) => ring.length >= 3);
}

/** Angle of the longest chord that strays from a circle by `tolerance` at most: sagitta = r (1 - cos(a/2)). */
function chordAngle(radius: Mm, tolerance: Mm): Deg {
  if (radius <= tolerance) return 90;
  return Math.min(90, degrees(2 * Math.acos(1 - tolerance / radius)));
}

/**
 * Points on an arc from one direction to the other, both ends included; clockwise when `toDeg` is less.
 * The points lie on the arc itself.
 */
export function arcPoints(
  center: Point,
  radius: Mm,
  fromDeg: Deg,
  toDeg: Deg,
  tolerance: Mm = FLATNESS,
): Point[] {
  const sweep = toDeg - fromDeg;
  const chords = Math.max(1, Math.ceil(Math.abs(sweep) / chordAngle(radius, tolerance) - SAME_LENGTH));
  const points: Point[] = [];
  for (let i = 0; i <= chords; i++) {
    const a = radians(fromDeg + (sweep * i) / chords);
    points.push({ x: center.x + radius * Math.cos(a), y: center.y + radius * Math.sin(a) });
  }
  return points;
}

/** Points of an arc about a center from one of its points to another, both as they are, turning by less than a whole turn. */
export function arcTo(center: Point, from: Point, to: Point, turn: 'left' | 'right'): Point[] {
  const start = angleOf(subtract(from, center));
  const end = angleOf(subtract(to, center));
  const sweep = turn === 'left' ? (end - start + 360) % 360 : -((start - end + 360) % 360);
  const points = arcPoints(center, distance(center, from), start, start + sweep);
  points[0] = from;
  points[points.length - 1] = to;
  return points;
}

/** Radius of the circle over a chord that rises by `rise` over its middle: (w2 / 4 + s2) / 2s. */
export const segmentRadius = (width: Mm, rise: Mm): Mm => ((width * width) / 4 + rise * rise) / (2 * rise);

/** The ellipse that fills a box, counterclockwise from its right; its points lie on it. */
export function ellipseRing(box: Box, tolerance: Mm = FLATNESS): Ring {
  const rx = box.w / 2;
  const ry = box.h / 2;
  const center = { x: box.x + rx, y: box.y + ry };
  // A chord over the same step strays most where the ellipse is widest: as on the circle of that radius.
  const quarter = Math.max(1, Math.ceil(90 / chordAngle(Math.max(rx, ry), tolerance)));
  const points: Point[] = [];
  for (let i = 0; i < 4 * quarter; i++) {
    const a = (Math.PI * i) / (2 * quarter);
    points.push({ x: center.x + rx * Math.cos(a), y: center.y + ry * Math.sin(a) });
  }
  // The four outermost points exactly, so that the ring's box is the given box.
  points[0] = { x: box.x + box.w, y: center.y };
  points[quarter] = { x: center.x, y: box.y + box.h };
  points[2 * quarter] = { x: box.x, y: center.y };
  points[3 * quarter] = { x: center.x, y: box.y };
  return points;
}

/**
 * Straight sides and a circular head that rises by `rise` to the top of the box, counterclockwise from the
 * lower left. A rise of more than half the
 * width is a half circle's, and no rise is a rectangle.
 */
export function archedRing(box: Box, rise: Mm, tolerance: Mm = FLATNESS): Ring {
  const { x, y, w, h } = box;
  const s = Math.min(rise, w / 2, h);
  const feet = [
    { x, y },
    { x: x + w, y },
  ];
  if (s <= SAME_LENGTH) return [...feet, { x: x + w, y: y + h }, { x, y: y + h }];
  const radius = segmentRadius(w, s);
  const center = { x: x + w / 2, y: y + h - radius };
  const half = degrees(Math.asin(Math.min(1, w / 2 / radius)));
  const arc = arcPoints(center, radius, 90 - half, 90 + half, tolerance);
  // Ends where the sides end, to the last digit.
  arc[0] = { x: x + w, y: y + h - s };
  arc[arc.length - 1] = { x, y: y + h - s };
  return withoutRepeats([...feet, ...arc], true);
}
