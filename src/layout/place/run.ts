import { USUAL_SEGMENTS } from '../../design/limits.ts';
import { goesAround, isClosed, onlyOf } from '../../design/path.ts';
import type { PanelShape, Run } from '../../design/schema.ts';
import { regionOfRings, union } from '../../geometry/clip.ts';
import { straightLoop } from '../../geometry/figures.ts';
import { areaOfLoop, type Loop } from '../../geometry/loop.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  dot,
  leftNormal,
  length,
  scale,
  subtract,
  unit,
} from '../../geometry/point.ts';
import { ringOfBox } from '../../geometry/region.ts';
import { reverseRing, signedArea } from '../../geometry/ring.ts';
import { intersectLines } from '../../geometry/segment.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import {
  type Arc,
  arcOver,
  type Line,
  lineTo,
  pointAt,
  reversed,
  type Stretch,
} from '../../geometry/stretch.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { cyclic, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Leg } from '../laid.ts';
import { borderOfShape, isCircle, joined, loopOfDrawn } from './drawn.ts';
import { lookOf } from './outlines.ts';

type RunLike = Pick<Run, 'path' | 'side'>;
type SawnFrom = NonNullable<Extract<Run['path'], { readonly form: 'points' }>['band']>;

/** A corner of a path, and whether the leg after it stands for a part of a bow. */
interface PathCorner extends Point {
  readonly bowed?: true;
}

export interface RunPath {
  readonly points: readonly PathCorner[];
  readonly closed: boolean;
}

/** Corners of the path in order of travel, its bows as straight segments of stock so wide; counterclockwise when closed. */
export function pathOfRun({ path }: Pick<Run, 'path'>, box: Box, width: Mm): RunPath {
  return cornersOfSides(madeSides(path, box, width), isClosed(path));
}

/** A side of a path, and of how many straight lengths of stock it is made. */
export interface MadeSide {
  readonly side: Stretch;
  readonly count: number;
}

/**
 * The sides of a path as its run is made. Where two meet so sharply that the miter would be longer than the segment that it
 * is cut on, as at the crown of an ogee, that bow is made of fewer and longer ones, which meet less sharply: else nothing
 * is left of the inner edge of the segment, and the outer one runs out into a spike.
 */
export function madeSides(path: Run['path'], box: Box, width: Mm): MadeSide[] {
  const closed = isClosed(path);
  const usual = ('segments' in path && path.segments) || USUAL_SEGMENTS;
  const made = sidesOfRun(path, box).map((side) => ({ side, count: side.kind === 'line' ? 1 : usual }));
  for (let fewer = true; fewer; ) {
    fewer = false;
    for (const [i, after] of made.entries()) {
      if (!closed && i === 0) continue;
      const before = cyclic(made, i - 1);
      const [come, go] = [chordAt(before, 1), chordAt(after, 0)];
      const turn = Math.acos(Math.min(1, Math.max(-1, dot(unit(come), unit(go)))));
      const reach = width * Math.tan(turn / 2);
      for (const [one, chord] of [
        [before, come],
        [after, go],
      ] as const) {
        if (one.count === 1 || reach <= length(chord)) continue;
        one.count--;
        fewer = true;
      }
    }
  }
  return made;
}

/** The first or last straight length of a side, as a way. */
const chordAt = ({ side, count }: MadeSide, end: 0 | 1): Point =>
  end === 0 ? subtract(pointAt(side, 1 / count), side.from) : subtract(side.to, pointAt(side, 1 - 1 / count));

/** The arcs of a path that is made of straight segments, and of how many. */
export const bowsOfRun = ({ path }: Pick<Run, 'path'>, box: Box, width: Mm) =>
  madeSides(path, box, width).flatMap(({ side, count }) =>
    side.kind === 'arc' && isCircle(side) ? [{ arc: side, count }] : [],
  );

/** The sides of a path that its run lies along, in order of travel; counterclockwise where it goes around. */
export function sidesOfRun(path: Run['path'], box: Box): Loop {
  const drawn = drawnSides(path, box);
  const around = goesAround(path);
  const all = around && areaOfLoop(drawn) < 0 ? drawn.toReversed().map(reversed) : drawn;
  const only = onlyOf(path);
  if (!only || all.length === 0) return all;
  const from = ((only.from % all.length) + all.length) % all.length;
  if (!around) return all.slice(from, from + only.count);
  return Array.from({ length: Math.min(only.count, all.length + 1) }, (_, i) => cyclic(all, from + i));
}

function drawnSides(path: Run['path'], box: Box): Loop {
  switch (path.form) {
    case 'frame':
      return straightLoop(ringOfBox(box));
    case 'arched':
      return archedSides(box, path.rise);
    case 'points':
      return loopOfDrawn(path.points, box, path.closed);
    case 'shape': {
      const border = joined(borderOfShape(path.shape, box));
      return path.open ? withoutFoot(border, path.shape, box) : border;
    }
  }
}

/** From one end of the level side at the foot of a head around to the other; all of what has no such side. */
function withoutFoot(border: Loop, shape: PanelShape, { y, h }: Box): Loop {
  const level = lookOf(shape) === 'down' ? y + h : y;
  const foot = border.findIndex(
    (side) => side.kind === 'line' && [side.from, side.to].every((p) => Math.abs(p.y - level) < SAME_LENGTH),
  );
  return foot < 0 ? border : [...border.slice(foot + 1), ...border.slice(0, foot)];
}

export function cornersOfSides(sides: readonly MadeSide[], around: boolean): RunPath {
  const last = sides.at(-1)?.side;
  const corners = sides.flatMap(({ side, count }): PathCorner[] => {
    if (side.kind === 'line') return [side.from];
    return Array.from({ length: count }, (_, i) => ({ ...pointAt(side, i / count), bowed: true }));
  });
  const points = distinct(around || !last ? corners : [...corners, last.to], around);
  return { points, closed: around && points.length > 2 };
}

/**
 * Sides of a path whose arcs are sawn from sheet, in order of travel, beginning after an arc where it is closed; null
 * where none is sawn so. What is smooth, or of an ellipse, is told by straight segments.
 */
export function sawnSides(
  { path }: Pick<Run, 'path'>,
  box: Box,
): { readonly sides: readonly (Line | Arc)[]; readonly closed: boolean; readonly band: SawnFrom } | null {
  if (path.form === 'frame' || !path.band) return null;
  const { band } = path;
  const closed = isClosed(path);
  const sides = sidesOfRun(path, box).flatMap((side) => straightened(side, path.segments));
  if (sides.every(({ kind }) => kind === 'line')) return null;
  const first = sides.findIndex((side, i) => side.kind === 'line' && cyclic(sides, i - 1).kind === 'arc');
  return {
    sides: closed && first > 0 ? [...sides.slice(first), ...sides.slice(0, first)] : sides,
    closed,
    band,
  };
}

function straightened(side: Stretch, segments = USUAL_SEGMENTS): (Line | Arc)[] {
  if (side.kind === 'line' || (side.kind === 'arc' && isCircle(side))) return [side];
  const at = (i: number) => pointAt(side, i / segments);
  return Array.from({ length: segments }, (_, i) => lineTo(at(i), at(i + 1)));
}

function distinct(points: readonly PathCorner[], closed: boolean): PathCorner[] {
  const apart = (a: Point, b: Point) =>
    Math.abs(a.x - b.x) > SAME_LENGTH || Math.abs(a.y - b.y) > SAME_LENGTH;
  const found: PathCorner[] = [];
  for (const p of points) {
    const last = found.at(-1);
    if (!last || apart(p, last)) found.push(p);
  }
  const first = found[0];
  const last = found.at(-1);
  if (closed && first && last && found.length > 1 && !apart(first, last)) found.pop();
  return found;
}

/** Sill, stiles and an arch over them, the arc through both springing points and the crown. */
function archedSides({ x, y, w, h }: Box, asked: Mm): (Line | Arc)[] {
  const rise = Math.min(asked, w / 2, h);
  const [left, right] = [x, x + w].map((side) => ({
    foot: { x: side, y },
    spring: { x: side, y: y + h - rise },
  })) as [Stile, Stile];
  return [
    lineTo(left.foot, right.foot),
    lineTo(right.foot, right.spring),
    arcOver(right.spring, left.spring, rise),
    lineTo(left.spring, left.foot),
  ];
}
type Stile = Record<'foot' | 'spring', Point>;

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
    return scale(leftNormal(subtract(b, a)), by);
  };
  return points.map((corner, i) => {
    if (!closed && i === 0) return add(corner, normalAt(0));
    if (!closed && i === n - 1) return add(corner, normalAt(n - 2));
    const before = pick(points, (i + n - 1) % n);
    const after = pick(points, (i + 1) % n);
    const into = normalAt((i + n - 1) % n);
    const out = normalAt(i);
    const straight =
      Math.abs(cross(unit(subtract(corner, before)), unit(subtract(after, corner)))) < SAME_LENGTH;
    if (straight) return add(corner, out);
    const tip = intersectLines(add(before, into), add(corner, into), add(corner, out), add(after, out));
    return tip && distance(tip, corner) <= LONGEST_MITER * Math.abs(by) ? tip : add(corner, out);
  });
}

/** Distance from the path to the far side of the stock, positive to the left of travel. */
export const reach = (run: RunLike, width: Mm): Mm => (run.side === 'inside' ? width : -width);

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
    const bowed = a.bowed ? { bowed: a.bowed } : {};
    legs.push({ start, end, ...section, angle: angleOf(subtract(b, a)), ...bowed });
  }
  return legs;
}

/** Where a run is cut at the ends of its path, from the left edge to the right one. */
type EndLines = { readonly [End in 'start' | 'end']?: { readonly line: readonly Point[] } };

/** The band that the stock covers; of an open path up to where its ends are cut, between that and the nearest corner. */
export function regionOfRun(run: RunLike, path: RunPath, width: Mm, { start, end }: EndLines = {}): Region {
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
  const cut: Ring[] = [];
  const [left, right] = run.side === 'inside' ? [far, near] : [near, far];
  for (let i = 0; i < legs; i++) {
    const next = (i + 1) % near.length;
    const from = i === 0 ? start?.line : undefined;
    const to = i === legs - 1 ? end?.line : undefined;
    if (from || to) {
      const back = to ? to.toReversed() : [pick(right, next), pick(left, next)];
      cut.push([...(from ?? [pick(left, i), pick(right, i)]), ...back]);
      continue;
    }
    const quad = [pick(near, i), pick(near, next), pick(far, next), pick(far, i)];
    quads.push(signedArea(quad) < 0 ? reverseRing(quad) : quad);
  }
  const whole = regionOfRings(quads, 'nonzero');
  // Where the cut crosses the miter, nothing is left beyond their crossing.
  return cut.length > 0 ? union([whole, regionOfRings(cut, 'positive')]) : whole;
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
