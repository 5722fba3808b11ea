import type { Check } from '../../check/check.ts';
import type { Run } from '../../design/schema.ts';
import { segmentRadius } from '../../geometry/curve.ts';
import { ringOfLoop } from '../../geometry/loop.ts';
import { add, angleOf, distance, scale, subtract } from '../../geometry/point.ts';
import { reverseRing } from '../../geometry/ring.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import { type Arc, arcAbout, lineTo, reversed } from '../../geometry/stretch.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { pick } from '../../list/at.ts';
import { type Deg, type Mm, radians } from '../../measure/units.ts';
import type { Leg, SawnHead, StoppedEnd, Stops } from '../laid.ts';

/** A run whose head is sawn from sheet: its head, its straight lengths up to it, and the area of both. */
export interface HeadedRun {
  readonly head: SawnHead;
  readonly legs: readonly Leg[];
  readonly stops: Stops;
  readonly region: Region;
}

/** Steps between head and stiles up to this are sanded off. Common practice, no source. */
const FLUSH: Mm = 0.5;

/**
 * A head that is not as thick as the stiles that it meets: their faces do not come flush, and the fasteners of the
 * whole run are chosen by the thickness of its stock.
 */
export function headNotFlush(id: string, { thickness }: SawnHead, height: Mm): Check[] {
  if (Math.abs(thickness - height) <= FLUSH) return [];
  const figures = { head_mm: thickness, stock_mm: height };
  return [{ code: 'run.head-not-flush', severity: 'warning', parts: [id], figures }];
}

/** What the ends of a run stop at where its own head is sawn apart. */
const OWN_HEAD = 'own-head';

/** Both borders of a head, the path's own one and the one at the far side of the stock, from right to left. */
interface Borders {
  readonly center: Point;
  readonly near: readonly [Point, Point];
  readonly far: readonly [Point, Point];
}

/**
 * The head of an arched run as pieces of a ring, with joints on radii at even angles over its shorter edge. At the springing it meets the
 * stiles along the line between the corners that path and stock make there. Null where the box has no room for that.
 *
 * @param legs of the run's open path: stile, sill, stile
 * @param thickness of the sheet
 */
export function headedRun(
  { path, side }: Pick<Run, 'path' | 'side'>,
  box: Box,
  legs: readonly Leg[],
  thickness: Mm,
): HeadedRun | null {
  const [first, sill, last] = legs;
  if (path.form !== 'arched' || !path.band || !first || !sill || !last) return null;
  const borders = bordersOf(path.rise, box, side === 'inside' ? first.width : -first.width);
  if (!borders) return null;
  const { near, far } = borders;
  const { pieces, turn, arcs } = piecesOf(borders, path.band.pieces);
  const reach = Math.max(near[0].y, far[0].y);
  const stop = (i: 0 | 1): StoppedEnd => ({
    at: OWN_HEAD,
    against: false,
    line: side === 'inside' ? [far[i], near[i]] : [near[i], far[i]],
  });
  const foot = side === 'inside' ? first.width : -first.width;
  const footed = (by: Mm): readonly [Point, Point] => [
    { x: box.x + by, y: box.y + by },
    { x: box.x + box.w - by, y: box.y + by },
  ];
  const rings = [ringOver(footed(0), arcs.near), ringOver(footed(foot), arcs.far)];
  const [outer, inner] = side === 'inside' ? [0, 1] : [1, 0];
  return {
    head: {
      stock: path.band.stock,
      thickness,
      center: borders.center,
      turn,
      pieces: side === 'inside' ? pieces : pieces.map((ring) => reverseRing(ring)),
      near,
      far,
    },
    legs: [
      { ...first, start: { ...first.start, y: reach } },
      sill,
      { ...last, end: { ...last.end, y: reach } },
    ],
    stops: { start: stop(1), end: stop(0) },
    region: [{ outer: pick(rings, outer), holes: [reverseRing(pick(rings, inner))] }],
  };
}

/** A border of the whole run, from the ends of its foot up to its arcs. */
function ringOver([left, right]: readonly [Point, Point], arcs: readonly Arc[]): Ring {
  const [first, last] = [pick(arcs, 0), pick(arcs, arcs.length - 1)];
  return ringOfLoop([lineTo(left, right), lineTo(right, first.from), ...arcs, lineTo(last.to, left)]);
}

/** Where both arcs of a head end, right and left; the stock lies `width` within the path, outside of it below 0. */
function bordersOf(asked: Mm, { x, y, w, h }: Box, width: Mm): Borders | null {
  const rise = Math.min(asked, w / 2, h);
  const spring = y + h - rise;
  const radius = segmentRadius(w, rise);
  const center = { x: x + w / 2, y: y + h - radius };
  const half = w / 2 - width;
  const far = radius - width;
  if (half <= SAME_LENGTH || far < half - SAME_LENGTH) return null;
  const shoulder = center.y + Math.sqrt(Math.max(0, far * far - half * half));
  // Nothing would be left of the stiles between sill and head.
  if (Math.min(shoulder - Math.max(0, width), spring) - y <= SAME_LENGTH) return null;
  return {
    center,
    near: [
      { x: x + w, y: spring },
      { x, y: spring },
    ],
    far: [
      { x: center.x + half, y: shoulder },
      { x: center.x - half, y: shoulder },
    ],
  };
}

/** How far a piece of a head leans to the left of upright; it is sawn standing upright. */
export const leanOf = (turn: Deg, count: number, i: number): Deg => turn * (i + 0.5 - count / 2);

/** The pieces from right to left, and both arcs whole. */
function piecesOf(
  { center, near, far }: Borders,
  count: number,
): { turn: Deg; pieces: Ring[]; arcs: Record<'near' | 'far', Arc[]> } {
  // Joints that cross both arcs leave them on radii within the shorter one.
  const from = Math.max(...[near, far].map(([right]) => angleOf(subtract(right, center))));
  const turn = (180 - 2 * from) / count;
  /** The corners of both arcs, at each joint and at the ends. */
  const corners = ([right, left]: Borders['near']): Point[] => {
    const radius = distance(right, center);
    return Array.from({ length: count + 1 }, (_, i) => {
      if (i === 0) return right;
      if (i === count) return left;
      const a = radians(from + turn * i);
      return add(center, scale({ x: Math.cos(a), y: Math.sin(a) }, radius));
    });
  };
  const [nearAt, farAt] = [corners(near), corners(far)];
  // Pieces alike have the same corners on the bench, where each is as high as its arc.
  const arcs = (at: readonly Point[]): Arc[] =>
    at.slice(1).map((p, i) => ({
      ...arcAbout(center, pick(at, i), p, 'left'),
      turned: -leanOf(turn, count, i),
    }));
  const [nears, fars] = [arcs(nearAt), arcs(farAt)];
  return {
    turn,
    pieces: nears.map((arc, i) => {
      const far = reversed(pick(fars, i));
      return ringOfLoop([arc, lineTo(arc.to, far.from), far, lineTo(far.to, arc.from)]);
    }),
    arcs: { near: nears, far: fars },
  };
}
