import type { Run } from '../../design/schema.ts';
import { regionOfRings } from '../../geometry/clip.ts';
import { angleOf, cross, distance, dot, subtract, unit } from '../../geometry/point.ts';
import { ringOfBox } from '../../geometry/region.ts';
import { reverseRing, signedArea } from '../../geometry/ring.ts';
import { intersectLines } from '../../geometry/segment.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Leg } from '../laid.ts';

type RunLike = Pick<Run, 'path' | 'side'>;

export interface RunPath {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** Corners of the path in order of travel; counterclockwise when closed. */
export function pathOfRun(run: RunLike, box: Box): RunPath {
  const { x, y, w, h } = box;
  switch (run.path.form) {
    case 'frame':
      return { points: ringOfBox(box), closed: true };
    case 'arched': {
      const points = archedPath(box, run.path.rise, run.path.segments);
      if (!run.path.band) return { points, closed: true };
      // The head is sawn apart: down the left stile, along the sill and up the right one.
      const [left, right, spring] = points;
      const last = points.at(-1);
      return { points: [last, left, right, spring].filter((p) => p !== undefined), closed: false };
    }
    case 'points': {
      const points = distinct(
        run.path.points.map(({ u, v }) => ({ x: x + u * w, y: y + v * h })),
        run.path.closed,
      );
      if (!run.path.closed || points.length < 3) return { points, closed: false };
      return { points: signedArea(points) < 0 ? reverseRing(points) : points, closed: true };
    }
  }
}

function distinct(points: readonly Point[], closed: boolean): Point[] {
  const apart = (a: Point, b: Point) =>
    Math.abs(a.x - b.x) > SAME_LENGTH || Math.abs(a.y - b.y) > SAME_LENGTH;
  const found: Point[] = [];
  for (const p of points) {
    const last = found.at(-1);
    if (!last || apart(p, last)) found.push(p);
  }
  const first = found[0];
  const last = found.at(-1);
  if (closed && first && last && found.length > 1 && !apart(first, last)) found.pop();
  return found;
}

/**
 * Sill, stiles and an arch of straight segments with their corners on the circle through both springing
 * points and the crown: radius = (half chord squared + rise squared) / (2 rise).
 */
function archedPath({ x, y, w, h }: Box, rise: Mm, segments: number): Point[] {
  const s = Math.min(rise, w / 2, h);
  const spring = y + h - s;
  const radius = ((w * w) / 4 + s * s) / (2 * s);
  const center = { x: x + w / 2, y: y + h - radius };
  const half = Math.atan2(w / 2, radius - s);
  const points: Point[] = [
    { x, y },
    { x: x + w, y },
    { x: x + w, y: spring },
  ];
  for (let i = 1; i < segments; i++) {
    const angle = half - (2 * half * i) / segments;
    points.push({ x: center.x + radius * Math.sin(angle), y: center.y + radius * Math.cos(angle) });
  }
  points.push({ x, y: spring });
  return distinct(points, true);
}

/** A corner that runs out farther than so many widths turns back on itself; no saw miters it. */
const LONGEST_MITER = 100;

/**
 * The path moved to its left by `by`, its corners mitered; ends of open paths are moved square, and so are
 * corners that turn back on themselves: their miter would lie out of all reach.
 */
function parallel(path: RunPath, by: Mm): Point[] {
  const { points, closed } = path;
  const n = points.length;
  const normalAt = (i: number): Point => {
    const a = pick(points, i % n);
    const b = pick(points, (i + 1) % n);
    const d = unit(subtract(b, a));
    return { x: -d.y * by, y: d.x * by };
  };
  const shift = (p: Point, v: Point): Point => ({ x: p.x + v.x, y: p.y + v.y });
  return points.map((corner, i) => {
    if (!closed && i === 0) return shift(corner, normalAt(0));
    if (!closed && i === n - 1) return shift(corner, normalAt(n - 2));
    const before = pick(points, (i + n - 1) % n);
    const after = pick(points, (i + 1) % n);
    const into = normalAt((i + n - 1) % n);
    const out = normalAt(i);
    const straight =
      Math.abs(cross(unit(subtract(corner, before)), unit(subtract(after, corner)))) < SAME_LENGTH;
    if (straight) return shift(corner, out);
    const tip = intersectLines(
      shift(before, into),
      shift(corner, into),
      shift(corner, out),
      shift(after, out),
    );
    return tip && distance(tip, corner) <= LONGEST_MITER * Math.abs(by) ? tip : shift(corner, out);
  });
}

/** Distance from the path to the far side of the stock, positive to the left of travel. */
const reach = (run: RunLike, width: Mm): Mm => (run.side === 'inside' ? width : -width);

/** Center lines of the stock; they meet at the miters. */
export function legsOfRun(
  run: RunLike,
  path: RunPath,
  section: { readonly width: Mm; readonly thickness: Mm },
): Leg[] {
  const center = parallel(path, reach(run, section.width) / 2);
  const count = path.closed ? center.length : center.length - 1;
  const legs: Leg[] = [];
  for (let i = 0; i < count; i++) {
    const start = pick(center, i);
    const end = pick(center, (i + 1) % center.length);
    const a = pick(path.points, i);
    const b = pick(path.points, (i + 1) % path.points.length);
    legs.push({ start, end, ...section, angle: angleOf(subtract(b, a)) });
  }
  return legs;
}

/** The band that the stock covers. */
export function regionOfRun(run: RunLike, path: RunPath, width: Mm): Region {
  const far = parallel(path, reach(run, width));
  const near = path.points;
  const outer = run.side === 'inside' ? near : far;
  const inner = run.side === 'inside' ? far : near;
  if (path.closed && isConvex(near) && keepsDirection(near, far)) {
    return [{ outer: [...outer], holes: [reverseRing(inner)] }];
  }
  // Where the stock is wider than the path has room for, leg by leg is still right.
  const legs = path.closed ? near.length : near.length - 1;
  const quads: Ring[] = [];
  for (let i = 0; i < legs; i++) {
    const next = (i + 1) % near.length;
    const quad = [pick(near, i), pick(near, next), pick(far, next), pick(far, i)];
    quads.push(signedArea(quad) < 0 ? reverseRing(quad) : quad);
  }
  return regionOfRings(quads, 'nonzero');
}

function isConvex(points: readonly Point[]): boolean {
  const n = points.length;
  return points.every(
    (p, i) =>
      cross(
        subtract(pick(points, (i + 1) % n), p),
        subtract(pick(points, (i + 2) % n), pick(points, (i + 1) % n)),
      ) >= 0,
  );
}

/** Every side of the parallel still runs the way of the path's side: none was eaten by its neighbors. */
function keepsDirection(near: readonly Point[], far: readonly Point[]): boolean {
  const n = near.length;
  return near.every(
    (p, i) =>
      dot(subtract(pick(near, (i + 1) % n), p), subtract(pick(far, (i + 1) % n), pick(far, i))) > SAME_LENGTH,
  );
}
