import { cornersIn } from '../../design/drawnCorners.ts';
import { FARTHEST, FARTHEST_HANDLE, leastCorners, MOST_CORNERS } from '../../design/limits.ts';
import type { OutlineCorner, PanelShape } from '../../design/schema.ts';
import { type DrawnCorner, type DrawnSide, drawnLoop } from '../../geometry/drawn.ts';
import { straightLoop } from '../../geometry/figures.ts';
import { boxOfLoop, type Loop } from '../../geometry/loop.ts';
import { distance } from '../../geometry/point.ts';
import { ringOfBox } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { type Arc, lineTo, partOf, reversed, riseOfArc, type Stretch } from '../../geometry/stretch.ts';
import { DUST, SAME_LENGTH } from '../../geometry/tolerance.ts';
import { pick } from '../../list/at.ts';
import { type Mm, radians } from '../../measure/units.ts';
import { isNamed, loopsOfNamed } from './outlines.ts';

type Share = { readonly u: number; readonly v: number };

/** Corners as shares of the box around them, or of one that they are to stay in. */
export function cornersOut(
  corners: readonly DrawnCorner[],
  frame: Box = boxOfPoints(corners.map(({ at }) => at)),
): OutlineCorner[] {
  const share = (value: Mm, from: Mm, size: Mm) => (size > 0 ? (value - from) / size : 0);
  const within = (value: number) => Math.min(1, Math.max(0, value));
  const shares = ({ x, y }: Point): Share => ({
    u: share(x, frame.x, frame.w),
    v: share(y, frame.y, frame.h),
  });
  return corners.map(({ at, side, cut }): OutlineCorner => {
    const { u, v } = shares(at);
    const out = side && sideOut(side, shares);
    return { u: within(u), v: within(v), ...(out ? { side: out } : {}), ...(cut ? { cut } : {}) };
  });
}

/** Within `most` to either side of nothing. */
const bounded = (value: number, most: number): number => Math.min(most, Math.max(-most, value));

/** A side as a design keeps it: no handle and no measure beyond what a file may have. */
function sideOut(side: DrawnSide, shares: (p: Point) => Share): NonNullable<OutlineCorner['side']> {
  if (side.as === 'rise') return { as: side.as, rise: bounded(side.rise, FARTHEST) };
  if (side.as === 'radius') return { as: side.as, radius: bounded(side.radius, FARTHEST) };
  if (!side.handles) return { as: side.as };
  const kept = (p: Point): Share => {
    const { u, v } = shares(p);
    return { u: bounded(u, FARTHEST_HANDLE), v: bounded(v, FARTHEST_HANDLE) };
  };
  return { as: side.as, handles: [kept(side.handles[0]), kept(side.handles[1])] };
}

const isPlain = (points: readonly OutlineCorner[]) => points.every(({ side, cut }) => !side && !cut);

/** Steps in which the place of the corners is found; level and upright sides take two. */
const MOST_STEPS = 40;
/** No less of the box than this is left to the corners. Our own choice. */
const LEAST_FRAME = 1 / 1000;
/** Halvings in which measures that have no room are brought down. */
const EASINGS = 12;

/** The box of an outline, or of an open path, whose corners lie in a frame. */
const boxOfDrawn = (points: readonly OutlineCorner[], frame: Box, closed: boolean): Box =>
  boxOfLoop(drawnLoop(cornersIn(points, frame), closed));

/**
 * Where the box around the corners lies so that the outline fills the given one: bows that reach out of the corners
 * leave them less room, and what is taken off a gable more. The measures stay as they are told, as far as they have
 * room; else all of them are brought down alike.
 */
export function frameOfDrawn(
  drawn: readonly OutlineCorner[],
  box: Box,
  closed = true,
): { readonly frame: Box; readonly points: readonly OutlineCorner[]; readonly eased?: true } {
  if (isPlain(drawn)) return { frame: box, points: drawn };
  const points = spanning(drawn);
  const flat = flatAlong(points);
  const full = framed(points, box, closed, flat);
  const off = full && flat ? boxOfDrawn(points, full, closed)[flat] - box[flat] : 0;
  if (full && Math.abs(off) <= SAME_LENGTH) return { frame: full, points };
  if (flat) return bowedTo(points, box, closed, flat);
  let [low, high] = [0, 1];
  let best = { frame: box, points: eased(points, 0) };
  for (let i = 0; i < EASINGS; i++) {
    const share = (low + high) / 2;
    const less = eased(points, share);
    const frame = framed(less, box, closed);
    if (frame) {
      best = { frame, points: less };
      low = share;
    } else high = share;
  }
  return { ...best, eased: true };
}

/**
 * The frame is moved and sized by what the outline lies beside the box, until it lies in it: along each axis by the
 * secant of the last two steps, since a bow of its own rise stays as it is while a smooth side grows with the frame.
 */
function framed(points: readonly OutlineCorner[], box: Box, closed: boolean, flat: Flat = null): Box | null {
  let [frame, own] = [box, boxOfDrawn(points, box, closed)];
  let [slopeX, slopeY] = [1, 1];
  for (let i = 0; i < MOST_STEPS; i++) {
    const next = {
      x: frame.x + box.x - own.x,
      y: frame.y + box.y - own.y,
      w: flat === 'w' ? 0 : frame.w + (box.w - own.w) / slopeX,
      h: flat === 'h' ? 0 : frame.h + (box.h - own.h) / slopeY,
    };
    if (SIDES.some((of) => of !== flat && next[of] <= box[of] * LEAST_FRAME)) return null;
    const off = Math.max(...MEASURES.map((of) => (of === flat ? 0 : Math.abs(own[of] - box[of]))));
    if (off <= DUST) return frame;
    const now = boxOfDrawn(points, next, closed);
    slopeX = slopeOf(now.w - own.w, next.w - frame.w, slopeX);
    slopeY = slopeOf(now.h - own.h, next.h - frame.h, slopeY);
    [frame, own] = [next, now];
  }
  return null;
}

const SIDES = ['w', 'h'] as const;
const MEASURES = ['x', 'y', ...SIDES] as const;

/** Along which side of their box all corners are on one line: what lies out of that is bowed alone. */
type Flat = (typeof SIDES)[number] | null;

function flatAlong(points: readonly OutlineCorner[]): Flat {
  const own = boxOfPoints(points.map(({ u, v }) => ({ x: u, y: v })));
  return SIDES.find((of) => own[of] === 0) ?? null;
}

/** Bows become no more than so many times as high as they are told. */
const MOST_BOWED = 64;
/** Halvings in which the height of a bow is found, to the last digits. */
const BOWINGS = 60;

/** Corners on one line, bowed as far as their box goes: of it alone a bow can be as high as the box. */
function bowedTo(points: readonly OutlineCorner[], box: Box, closed: boolean, flat: 'w' | 'h') {
  const of = (share: number) => {
    const bowed = eased(points, share);
    return { frame: framed(bowed, box, closed, flat), points: bowed };
  };
  let [low, high] = [0, 1];
  const reaches = (share: number) => {
    const { frame, points: bowed } = of(share);
    return frame === null || boxOfDrawn(bowed, frame, closed)[flat] >= box[flat];
  };
  while (high < MOST_BOWED && !reaches(high)) high *= 2;
  for (let i = 0; i < BOWINGS; i++) {
    const share = (low + high) / 2;
    if (reaches(share)) high = share;
    else low = share;
  }
  const best = of(low);
  return { frame: best.frame ?? { ...box, [flat]: 0 }, points: best.points };
}

/** By how much an outline grows with its frame, within what keeps the steps in bounds. */
const slopeOf = (outline: Mm, frame: Mm, last: number): number =>
  Math.abs(frame) > DUST ? Math.min(4, Math.max(1 / 4, outline / frame)) : last;

/** Corners that reach to all sides of their box, wherever a file has them. */
function spanning(points: readonly OutlineCorner[]): readonly OutlineCorner[] {
  const own = boxOfPoints(points.map(({ u, v }) => ({ x: u, y: v })));
  if (own.w === 1 && own.h === 1) return points;
  return cornersOut(cornersIn(points, { x: 0, y: 0, w: 1, h: 1 }));
}

/** The measures of sides and corners times a share; a radius grows as its rise shrinks. */
const eased = (points: readonly OutlineCorner[], share: number): OutlineCorner[] =>
  points.map(({ u, v, side, cut }) => ({
    u,
    v,
    ...(side && share > 0 ? { side: easedSide(side, share) } : {}),
    ...(cut && share > 0 ? { cut: { ...cut, size: cut.size * share } } : {}),
  }));

/** Smooth sides by themselves grow with the frame, and always have room. */
function easedSide(side: NonNullable<OutlineCorner['side']>, share: number): OutlineCorner['side'] {
  if (side.as === 'rise') return { ...side, rise: side.rise * share };
  if (side.as === 'radius') return { ...side, radius: side.radius / share };
  return share < 1 / 2 ? { as: 'smooth' } : side;
}

/** The outer border of a shape in its box. */
export function borderOfShape(shape: PanelShape, box: Box): Loop {
  if (shape.form === 'polygon') return loopOfDrawn(shape.points, box);
  return isNamed(shape) ? pick(loopsOfNamed(shape, box), 0) : straightLoop(ringOfBox(box));
}

/** The border of a drawn outline in its box; of an open path its sides. */
export function loopOfDrawn(points: readonly OutlineCorner[], box: Box, closed = true): Loop {
  const { frame, points: fitting } = frameOfDrawn(points, box, closed);
  return drawnLoop(cornersIn(fitting, frame), closed);
}

/**
 * The same outline as one that is drawn: its corners may be moved, its sides bowed. Arcs stay arcs; an ellipse is
 * told by smooth sides, which stray from it by less than 0.03% of its size. Null where it is not one border.
 */
export function freed(shape: PanelShape, box: Box): PanelShape | null {
  if (shape.form === 'polygon') return null;
  if (!isNamed(shape) || shape.form === 'corners') {
    const cut = isNamed(shape) ? { cut: { how: shape.cut, size: shape.size } } : {};
    const corners = ringOfBox({ x: 0, y: 0, w: 1, h: 1 });
    return { form: 'polygon', points: corners.map(({ x, y }) => ({ u: x, v: y, ...cut })) };
  }
  const loop = oneBorder(loopsOfNamed(shape, box));
  if (!loop) return null;
  const long = joined(loop);
  // Half circles alone leave fewer corners than an outline has: of those each keeps its crown.
  const sides = long.length < leastCorners(true) ? long.flatMap(halved) : long;
  const corners = sides.flatMap(cornersAlong);
  return corners.length >= leastCorners(true) && corners.length <= MOST_CORNERS
    ? { form: 'polygon', points: cornersOut(corners) }
    : null;
}

const halved = (stretch: Stretch): Stretch[] =>
  stretch.kind === 'line' ? [stretch] : [partOf(stretch, 0, 1 / 2), partOf(stretch, 1 / 2, 1)];

/** The border of a shape; around a band that is open at one end, out along one edge and back along the other. */
function oneBorder([outer, inner, ...more]: readonly Loop[]): Loop | null {
  if (!outer || more.length > 0) return null;
  if (!inner) return outer;
  const level = (at: Mm) => (stretch: Stretch) =>
    stretch.kind === 'line' && stretch.from.y === at && stretch.to.y === at;
  const open = outer.findIndex(
    (stretch) => level(stretch.from.y)(stretch) && inner.some(level(stretch.from.y)),
  );
  const foot = outer[open];
  const along = foot ? inner.findIndex(level(foot.from.y)) : -1;
  const within = inner[along];
  if (!foot || !within) return null;
  const there = [...outer.slice(open + 1), ...outer.slice(0, open)];
  const back = [...inner.slice(along + 1), ...inner.slice(0, along)].toReversed().map(reversed);
  return [...there, lineTo(foot.from, within.from), ...back, lineTo(within.to, foot.to)];
}

/** Arcs that go on in each other as one, up to half a turn. */
export function joined(loop: Loop): Stretch[] {
  const all: Stretch[] = [];
  for (const stretch of loop) {
    const last = all.at(-1);
    if (last?.kind === 'arc' && stretch.kind === 'arc' && goesOn(last, stretch)) {
      all[all.length - 1] = { ...last, to: stretch.to, sweep: last.sweep + stretch.sweep };
    } else all.push(stretch);
  }
  return all;
}

const goesOn = (a: Arc, b: Arc): boolean =>
  distance(a.center, b.center) < SAME_LENGTH &&
  Math.abs(a.rx - b.rx) < SAME_LENGTH &&
  isCircle(a) &&
  a.sweep * b.sweep > 0 &&
  Math.abs(a.sweep + b.sweep) <= 180;

export const isCircle = ({ rx, ry }: Arc): boolean => Math.abs(rx - ry) < SAME_LENGTH;

function cornersAlong(stretch: Stretch): DrawnCorner[] {
  const { from: at } = stretch;
  if (stretch.kind === 'line') return [{ at }];
  if (stretch.kind === 'cubic') return [{ at, side: { as: 'smooth', handles: [stretch.h1, stretch.h2] } }];
  if (isCircle(stretch)) return [{ at, side: { as: 'rise', rise: riseOfArc(stretch) } }];
  const quarters = Math.max(1, Math.ceil(Math.abs(stretch.sweep) / 90 - SAME_LENGTH));
  return Array.from({ length: quarters }, (_, i) => {
    const arc = partOf(stretch, i / quarters, (i + 1) / quarters) as Arc;
    return { at: arc.from, side: { as: 'smooth', handles: handlesOf(arc) } };
  });
}

/** Handles of a quarter of an ellipse or less: 4/3 of the tangent of a quarter of its turn, along its ends. */
function handlesOf({ from, to, center, rx, ry, sweep }: Arc): readonly [Point, Point] {
  const k = (4 / 3) * Math.tan(radians(sweep) / 4);
  const along = (p: Point, times: number): Point => ({
    x: p.x - (times * (p.y - center.y) * rx) / ry,
    y: p.y + (times * (p.x - center.x) * ry) / rx,
  });
  return [along(from, k), along(to, -k)];
}
