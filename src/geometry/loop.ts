import { cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { distance } from './point.ts';
import { boxOfPoints } from './ring.ts';
import type { Box, Point, Ring } from './shape.ts';
import {
  type Arc,
  type Curved,
  lengthOf,
  pointAt,
  reversed,
  type Stretch,
  sharesOf,
  sweptArea,
  turnsOf,
} from './stretch.ts';
import { FLATNESS, SAME_LENGTH } from './tolerance.ts';

/** A closed outline of lines and curves: each stretch begins where the one before it ends. */
export type Loop = readonly Stretch[];

/** A corner of a polygon that lies on the curves which its sides stand for. Clipping gives corners back as they are. */
export interface CurvePoint extends Point {
  readonly on: readonly Curved[];
}

/** The curves that a corner of a polygon lies on; none of one that is only straight. */
export const curvesAt = (p: Point): readonly Curved[] => (p as Partial<CurvePoint>).on ?? [];

const isCurved = (stretch: Stretch): stretch is Curved => stretch.kind !== 'line';

/** Area inside of a loop that does not cross itself, more than 0 where it is walked counterclockwise. */
export function areaOfLoop(loop: Loop): number {
  const about = loop[0]?.from;
  return about ? loop.reduce((sum, stretch) => sum + sweptArea(stretch, about), 0) : 0;
}

export const lengthOfLoop = (loop: Loop): Mm => loop.reduce((sum, stretch) => sum + lengthOf(stretch), 0);

/** Smallest box around a loop or a path, its curves by where they are farthest out. */
export const boxOfLoop = (loop: Loop): Box =>
  boxOfPoints(
    loop.flatMap((stretch) => [
      stretch.from,
      ...turnsOf(stretch).map((t) => pointAt(stretch, t)),
      stretch.to,
    ]),
  );

/** The points of a stretch between which it is made straight, its own ends as they are. */
export const pointsOf = (stretch: Stretch, tolerance: Mm = FLATNESS): Point[] =>
  pointsAt(stretch, sharesOf(stretch, tolerance));

/** The points at such shares of a stretch, its own ends as they are. */
export const pointsAt = (stretch: Stretch, shares: readonly number[]): Point[] => [
  stretch.from,
  ...shares.slice(1, -1).map((t) => pointAt(stretch, t)),
  stretch.to,
];

/**
 * The polygon that stands for a loop: its corners lie on the loop, and its sides stray from it by `tolerance` at
 * most. Corners on a curve tell it, so that lengths and areas can be told of the curve (`trueAreaOf`).
 */
export function ringOfLoop(loop: Loop, tolerance: Mm = FLATNESS): Ring {
  const ring: Point[] = [];
  loop.forEach((stretch, i) => {
    const before = cyclic(loop, i - 1);
    for (const [j, { x, y }] of pointsOf(stretch, tolerance).slice(0, -1).entries()) {
      const on = [...(j === 0 ? [before] : []), stretch].filter(isCurved);
      const corner: CurvePoint | Point = on.length > 0 ? { x, y, on } : { x, y };
      ring.push(corner);
    }
  });
  return ring;
}

/** Without stretches of no length. */
export function tidied(loop: Loop): Loop {
  return loop.filter(({ kind, from, to }) => kind !== 'line' || distance(from, to) > SAME_LENGTH);
}

/** A map that keeps what is level level, and what is upright upright: each measure times a factor, and moved. */
export interface Stretching {
  readonly x: { readonly times: number; readonly plus: Mm };
  readonly y: { readonly times: number; readonly plus: Mm };
}

/** The loop stretched; one that is turned over is walked the other way, so that it stays counterclockwise. */
export function stretched(loop: Loop, { x, y }: Stretching): Loop {
  const at = (p: Point): Point => ({ x: p.x * x.times + x.plus, y: p.y * y.times + y.plus });
  const moved = loop.map((stretch): Stretch => {
    const [from, to] = [at(stretch.from), at(stretch.to)];
    if (stretch.kind === 'line') return { kind: 'line', from, to };
    if (stretch.kind === 'cubic') return { kind: 'cubic', from, h1: at(stretch.h1), h2: at(stretch.h2), to };
    return { ...stretchedArc(stretch, x.times, y.times), from, to, center: at(stretch.center) };
  });
  if (x.times * y.times > 0) return moved;
  // From the corner before, as a polygon that is read backward begins.
  const back = moved.toReversed().map(reversed);
  return [...back.slice(1), pick(back, 0)];
}

function stretchedArc(arc: Arc, timesX: number, timesY: number): Arc {
  const mirrored = timesX * timesY < 0;
  const start =
    timesX < 0 ? (timesY < 0 ? arc.start + 180 : 180 - arc.start) : timesY < 0 ? -arc.start : arc.start;
  return {
    ...arc,
    rx: arc.rx * Math.abs(timesX),
    ry: arc.ry * Math.abs(timesY),
    start,
    sweep: mirrored ? -arc.sweep : arc.sweep,
  };
}
