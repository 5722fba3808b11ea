import { cyclic, pick } from '../list/at.ts';
import { type Mm, radians } from '../measure/units.ts';
import type { CornerCut } from './figures.ts';
import { type Loop, tidied } from './loop.ts';
import { add, cross, distance, dot, leftNormal, length, scale, subtract, unit } from './point.ts';
import { signedArea } from './ring.ts';
import type { Point } from './shape.ts';
import {
  arcAbout,
  arcOver,
  lineTo,
  paceAt,
  partOf,
  pointAt,
  riseOfRadius,
  type Stretch,
  wayAt,
} from './stretch.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** How the side from a corner to the next one runs; measures out of the outline where they are more than 0. */
export type DrawnSide =
  | { readonly as: 'rise'; readonly rise: Mm }
  | { readonly as: 'radius'; readonly radius: Mm }
  /** By its two handles; by itself, into its neighbors, where it has none. */
  | { readonly as: 'smooth'; readonly handles?: readonly [Point, Point] | undefined };

/** A corner of a drawn outline, how the side after it runs, and what is taken off it. */
export interface DrawnCorner {
  readonly at: Point;
  readonly side?: DrawnSide | undefined;
  readonly cut?: { readonly how: CornerCut; readonly size: Mm } | undefined;
}

/**
 * The outline through its corners, as it is drawn: straight, bowed and smooth sides, each corner worked as it says. A
 * path that is open does not come back to where it starts, and its two ends are as they are.
 */
export function drawnLoop(corners: readonly DrawnCorner[], closed = true): Loop {
  return cornersCut(sidesOf(corners, closed), corners);
}

/**
 * More than 0 where the corners are walked counterclockwise, so that out is to the right of the way. There it is of
 * an open path too, which has no inside.
 */
export function windingOf(points: readonly Point[], closed = true): 1 | -1 {
  return closed && signedArea(points) < 0 ? -1 : 1;
}

type Bow =
  | { readonly as: 'rise'; readonly rise: Mm }
  | { readonly as: 'radius'; readonly radius: Mm }
  | { readonly as: 'smooth' };

/** Corners whose sides are bowed to the other side of their way. */
export const bowedBack = <C extends { readonly side?: Bow | undefined }>(corners: readonly C[]): C[] =>
  corners.map((corner) => (corner.side ? { ...corner, side: otherWay(corner.side) } : corner));

function otherWay(side: Bow): Bow {
  if (side.as === 'rise') return { ...side, rise: -side.rise };
  return side.as === 'radius' ? { ...side, radius: -side.radius } : side;
}

/** The rise that a bowed side has over its chord, out of the outline. */
export function riseOf(side: DrawnSide, chord: Mm): Mm {
  if (side.as === 'rise') return side.rise;
  return side.as === 'radius' ? Math.sign(side.radius) * riseOfRadius(chord, Math.abs(side.radius)) : 0;
}

/** The sides before anything is taken off their corners; of an open path none after the last one. */
export function sidesOf(corners: readonly DrawnCorner[], closed = true): Stretch[] {
  const out = windingOf(
    corners.map(({ at }) => at),
    closed,
  );
  const begun = closed ? corners : corners.slice(0, -1);
  const firm = begun.map(({ at, side }, i): Stretch | null => {
    const next = cyclic(corners, i + 1).at;
    if (!side) return lineTo(at, next);
    return side.as === 'smooth' ? null : arcOver(at, next, out * riseOf(side, distance(at, next)));
  });
  return begun.map(({ at, side }, i): Stretch => {
    const known = pick(firm, i);
    if (known) return known;
    const to = cyclic(corners, i + 1).at;
    const third = distance(at, to) / 3;
    const way = (of: number) => directionAt(corners, firm, closed, of);
    const [h1, h2] = (side?.as === 'smooth' && side.handles) || [
      add(at, scale(way(i), third)),
      subtract(to, scale(way(i + 1), third)),
    ];
    return { kind: 'cubic', from: at, h1, h2, to };
  });
}

/**
 * The way that smooth sides take through a corner: on from a straight or bowed side, and between two smooth ones that
 * of the parabola through the corner and its neighbors, by the lengths of the sides (Bessel's tangent). At an end of an
 * open path straight to its neighbor.
 */
function directionAt(
  corners: readonly DrawnCorner[],
  firm: readonly (Stretch | null)[],
  closed: boolean,
  i: number,
): Point {
  const [starts, ends] = closed ? [false, false] : [i === 0, i === corners.length - 1];
  const [before, after] = [starts ? null : cyclic(firm, i - 1), ends ? null : cyclic(firm, i)];
  if (before) return unit(paceAt(before, 1));
  if (after) return unit(paceAt(after, 0));
  const at = cyclic(corners, i).at;
  const back = subtract(at, cyclic(corners, i - 1).at);
  const on = subtract(cyclic(corners, i + 1).at, at);
  if (starts || ends) return unit(starts ? on : back);
  const [b, o] = [length(back), length(on)];
  if (b === 0 || o === 0) return unit(b === 0 ? on : back);
  return unit(add(scale(back, o / b), scale(on, b / o)));
}

/** What is taken off a corner: how far along its two sides, as shares of them, and what comes in its place. */
interface Taken {
  /** Where the side before it ends. */
  readonly end: number;
  /** Where the side after it begins. */
  readonly begin: number;
  readonly worked: Loop;
}
const NOTHING: Taken = { end: 1, begin: 0, worked: [] };

/** Times that sizes of corners are brought down until they have room. */
const MOST_TRIES = 40;

/** Whether what is taken off the corners of an outline has no room between them as it is told. */
export const cutsEased = (corners: readonly DrawnCorner[], closed = true): boolean =>
  corners.some(({ cut }) => cut) && takenBetween(sidesOf(corners, closed), corners).eased;

function cornersCut(sides: readonly Stretch[], corners: readonly DrawnCorner[]): Loop {
  if (corners.every(({ cut }) => !cut)) return tidied(sides);
  const { taken } = takenBetween(sides, corners);
  return tidied(
    sides.flatMap((side, i) => [
      ...pick(taken, i).worked,
      partOf(side, pick(taken, i).begin, Math.max(pick(taken, i).begin, cyclic(taken, i + 1).end)),
    ]),
  );
}

/** What is taken off each corner, and whether sizes were brought down until all of them have room. */
function takenBetween(
  sides: readonly Stretch[],
  corners: readonly DrawnCorner[],
): { readonly taken: readonly Taken[]; readonly eased: boolean } {
  const share = corners.map(() => 1);
  const off = (i: number) => {
    const after = sides[i];
    // Nothing can be taken off where an open path ends.
    if (!after || (i === 0 && sides.length < corners.length)) return NOTHING;
    return takenOff(cyclic(sides, i - 1), after, pick(corners, i), pick(share, i));
  };
  let found = corners.map((_, i) => off(i));
  let taken = found.map((one) => one ?? NOTHING);
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const fits = found.map((one) => (one ? 1 : 1 / 2));
    sides.forEach((_, i) => {
      const j = (i + 1) % corners.length;
      const asked = pick(taken, i).begin + 1 - pick(taken, j).end;
      if (asked <= 1 + SAME_LENGTH) return;
      fits[i] = Math.min(pick(fits, i), 1 / asked);
      fits[j] = Math.min(pick(fits, j), 1 / asked);
    });
    if (fits.every((f) => f === 1)) break;
    fits.forEach((f, i) => {
      share[i] = pick(share, i) * f;
    });
    found = found.map((one, i) => (pick(fits, i) === 1 ? one : off(i)));
    taken = found.map((one) => one ?? NOTHING);
  }
  return { taken, eased: share.some((one) => one < 1 - SAME_LENGTH) };
}

/** Null: there is no room for it so large. */
function takenOff(before: Stretch, after: Stretch, { at, cut }: DrawnCorner, share: number): Taken | null {
  if (!cut) return NOTHING;
  const [come, go] = [wayAt(before, 1), wayAt(after, 0)];
  const turn = cross(come, go);
  const size = cut.size * share;
  // Straight on there is no corner.
  if (Math.abs(turn) < SAME_LENGTH || size <= SAME_LENGTH) return NOTHING;
  if (cut.how === 'rounded') return rounded(before, after, size, turn > 0 ? 1 : -1);
  const end = awayFrom(before, at, size, 1);
  const begin = awayFrom(after, at, size, 0);
  if (end === null || begin === null) return null;
  const [first, last] = [pointAt(before, end), pointAt(after, begin)];
  switch (cut.how) {
    case 'coved':
      return { end, begin, worked: [arcAbout(at, first, last, turn > 0 ? 'right' : 'left')] };
    case 'clipped':
      return { end, begin, worked: [lineTo(first, last)] };
    case 'stepped': {
      const inner = subtract(add(first, last), at);
      return { end, begin, worked: [lineTo(first, inner), lineTo(inner, last)] };
    }
  }
}

/** Looked at this often along a side. */
const LOOKS = 16;

/** The share of a side nearest its end at `at` that lies `size` away from there; null where the side is shorter. */
function awayFrom(side: Stretch, at: Point, size: Mm, end: 0 | 1): number | null {
  const share = (s: number) => (end === 0 ? s : 1 - s);
  if (side.kind === 'line') {
    const s = size / distance(side.from, side.to);
    return s <= 1 + SAME_LENGTH ? share(Math.min(1, s)) : null;
  }
  if (side.kind === 'arc') {
    // The chord of an angle: 2 R sin(a / 2).
    const s = (2 * Math.asin(size / (2 * side.rx))) / Math.abs(radians(side.sweep));
    return s <= 1 + SAME_LENGTH ? share(Math.min(1, s)) : null;
  }
  const away = (s: number) => distance(pointAt(side, share(s)), at);
  let far = 0;
  do far += 1 / LOOKS;
  while (far < 1 && away(far) < size);
  if (away(far) < size) return null;
  let near = far - 1 / LOOKS;
  while (far - near > 1e-13) {
    const middle = (near + far) / 2;
    if (away(middle) < size) near = middle;
    else far = middle;
  }
  return share(far);
}

/**
 * An arc of a radius that both sides run into: its center is as far from one as from the other. Found by Newton's
 * method from where it is between the straight lines at the corner, which it is at once where both are straight.
 */
function rounded(before: Stretch, after: Stretch, radius: Mm, side: 1 | -1): Taken | null {
  const [come, go] = [wayAt(before, 1), wayAt(after, 0)];
  const angle = Math.atan2(Math.abs(cross(come, go)), dot(come, go));
  const back = radius * Math.tan(angle / 2);
  let end = 1 - back / speedAt(before, 1);
  let begin = back / speedAt(after, 0);
  for (let i = 0; i < 50; i++) {
    const miss = subtract(centerFrom(before, end, radius * side), centerFrom(after, begin, radius * side));
    if (length(miss) < 1e-11 * (1 + radius)) break;
    const a = centerPace(before, end, radius * side);
    const b = scale(centerPace(after, begin, radius * side), -1);
    const under = cross(a, b);
    if (under === 0) return null;
    end -= cross(miss, b) / under;
    begin -= cross(a, miss) / under;
  }
  const center = centerFrom(before, end, radius * side);
  const [first, last] = [pointAt(before, end), pointAt(after, begin)];
  const meets = Math.abs(distance(center, last) - radius) < SAME_LENGTH;
  const within = end >= -SAME_LENGTH && end <= 1 && begin >= 0 && begin <= 1 + SAME_LENGTH;
  if (!meets || !within) return null;
  const [from, to] = [Math.max(0, end), Math.min(1, begin)];
  return { end: from, begin: to, worked: [arcAbout(center, first, last, side > 0 ? 'left' : 'right')] };
}

/** How fast a side is at one of its ends, and no less than on average: it stands still where a handle lies on the end. */
const speedAt = (side: Stretch, end: 0 | 1): number =>
  Math.max(length(paceAt(side, end)), distance(side.from, side.to));

/** The center of a circle that touches a side there, to its left where the measure is more than 0. */
const centerFrom = (stretch: Stretch, t: number, left: Mm): Point =>
  add(pointAt(stretch, t), scale(leftNormal(paceAt(stretch, t)), left));

/** How that center moves along the side: slower than the point by as much as the side bends toward it. */
function centerPace(stretch: Stretch, t: number, left: Mm): Point {
  const pace = paceAt(stretch, t);
  const bend = cross(pace, bendAt(stretch, t)) / length(pace) ** 3;
  return scale(pace, 1 - left * bend);
}

/** The second derivative of a stretch. */
function bendAt(stretch: Stretch, t: number): Point {
  if (stretch.kind === 'line') return { x: 0, y: 0 };
  if (stretch.kind === 'arc') {
    const turn = radians(stretch.sweep);
    return scale(subtract(pointAt(stretch, t), stretch.center), -turn * turn);
  }
  const { from, h1, h2, to } = stretch;
  const along = (a: number, b: number, c: number, d: number) =>
    6 * ((1 - t) * (c - 2 * b + a) + t * (d - 2 * c + b));
  return { x: along(from.x, h1.x, h2.x, to.x), y: along(from.y, h1.y, h2.y, to.y) };
}
