import { at } from '../list/at.ts';
import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';
import { chordAngle, chordsOfCubic, cubicPoint, segmentRadius, turnsOfCubic } from './curve.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  dot,
  leftNormal,
  length,
  lerp,
  midpoint,
  scale,
  subtract,
  unit,
} from './point.ts';
import type { Point } from './shape.ts';
import { DUST, FLATNESS, SAME_LENGTH, SAME_PLACE } from './tolerance.ts';

/** Shares of a stretch closer than this are one place of it. */
const SAME_SHARE = 1e-9;

/** A straight stretch of an outline. */
export interface Line {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** A stretch of a circle, or of an ellipse whose axes are level and upright. */
export interface Arc {
  readonly kind: 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly center: Point;
  readonly rx: Mm;
  readonly ry: Mm;
  /** Where it begins, counterclockwise from x; of an ellipse the angle on the circle that it is a squeezed one of. */
  readonly start: Deg;
  /** How far it turns, to the left where it is more than 0. */
  readonly sweep: Deg;
  /** Of a circle: by how much it is turned where it is sawn, and there is to be met where it is farthest out. */
  readonly turned?: Deg;
}

/** A smooth stretch by two handles. */
export interface Cubic {
  readonly kind: 'cubic';
  readonly from: Point;
  readonly h1: Point;
  readonly h2: Point;
  readonly to: Point;
}

export type Stretch = Line | Arc | Cubic;
export type Curved = Arc | Cubic;

export const lineTo = (from: Point, to: Point): Line => ({ kind: 'line', from, to });

/** An arc of a circle about a center from one of its points to another, turning by less than a whole turn. */
export function arcAbout(center: Point, from: Point, to: Point, turn: 'left' | 'right'): Arc {
  const start = angleOf(subtract(from, center));
  const end = angleOf(subtract(to, center));
  const sweep = turn === 'left' ? (end - start + 360) % 360 : -((start - end + 360) % 360);
  const radius = distance(center, from);
  return { kind: 'arc', from, to, center, rx: radius, ry: radius, start, sweep };
}

/** The arc over the chord between two points that rises by `rise` to the right of the way, to its left where that is negative; a line where it hardly does. */
export function arcOver(from: Point, to: Point, rise: Mm): Arc | Line {
  const chord = distance(from, to);
  if (chord === 0 || Math.abs(rise) < SAME_PLACE) return lineTo(from, to);
  const right = scale(leftNormal(subtract(to, from)), -1);
  const radius = segmentRadius(chord, rise);
  const center = add(midpoint(from, to), scale(right, rise - radius));
  // By the rise, and not by the angles at the center: of a flat arc that is far away, and they lose their digits.
  const sweep = degrees(4 * Math.atan((2 * rise) / chord));
  const middle = angleOf(scale(right, rise));
  const size = Math.abs(radius);
  return { kind: 'arc', from, to, center, rx: size, ry: size, start: middle - sweep / 2, sweep };
}

/** How far an arc of a radius rises over its chord: of the two the flatter one. */
export const riseOfRadius = (chord: Mm, radius: Mm): Mm => {
  const r = Math.max(radius, chord / 2);
  return r - Math.sqrt(Math.max(0, r * r - (chord * chord) / 4));
};

/** How far an arc of a circle rises over its chord, to the right of the way. */
export const riseOfArc = ({ rx, sweep }: Arc): Mm =>
  Math.sign(sweep) * rx * (1 - Math.cos(radians(sweep) / 2));

/** How far the circle through three points rises over the line from the first to the last, to the right of the way; 0 where they lie on a line. */
export function riseThrough(from: Point, through: Point, to: Point): Mm {
  const chord = subtract(to, from);
  const size = length(chord);
  const [a, b] = [subtract(from, through), subtract(to, through)];
  const turn = cross(a, b);
  if (size === 0 || Math.abs(turn) < 1e-9 * size) return 0;
  // Half of the arc is seen from any of its points under the same angle: rise = chord / 2 cot(angle / 2).
  const seen = Math.atan2(Math.abs(turn), dot(a, b));
  return (-Math.sign(cross(chord, subtract(through, from))) * size) / 2 / Math.tan(seen / 2);
}

/** The point at a share of the stretch's own pace: of an arc by its angle. */
export function pointAt(stretch: Stretch, t: number): Point {
  switch (stretch.kind) {
    case 'line':
      return lerp(stretch.from, stretch.to, t);
    case 'arc': {
      const a = radians(stretch.start + stretch.sweep * t);
      const { center, rx, ry } = stretch;
      return { x: center.x + rx * Math.cos(a), y: center.y + ry * Math.sin(a) };
    }
    case 'cubic':
      return cubicPoint(stretch.from, stretch.h1, stretch.h2, stretch.to, t);
  }
}

/** How the point moves there, by the stretch's own pace: the first derivative. */
export function paceAt(stretch: Stretch, t: number): Point {
  switch (stretch.kind) {
    case 'line':
      return subtract(stretch.to, stretch.from);
    case 'arc': {
      const a = radians(stretch.start + stretch.sweep * t);
      const turn = radians(stretch.sweep);
      return { x: -stretch.rx * Math.sin(a) * turn, y: stretch.ry * Math.cos(a) * turn };
    }
    case 'cubic': {
      const { from, h1, h2, to } = stretch;
      const s = 1 - t;
      const along = (a: number, b: number, c: number, d: number) =>
        3 * (s * s * (b - a) + 2 * s * t * (c - b) + t * t * (d - c));
      return { x: along(from.x, h1.x, h2.x, to.x), y: along(from.y, h1.y, h2.y, to.y) };
    }
  }
}

/** The way that a stretch takes at one of its ends, one long: by the next handle where its own lies on the end. */
export function wayAt(stretch: Stretch, end: 0 | 1): Point {
  const pace = paceAt(stretch, end);
  if (stretch.kind !== 'cubic' || length(pace) > SAME_LENGTH) return unit(pace);
  const { from, h1, h2, to } = stretch;
  const way = end === 0 ? subtract(h2, from) : subtract(to, h1);
  return unit(length(way) > SAME_LENGTH ? way : subtract(to, from));
}

/** Looked at this often for the part of a stretch that is nearest. */
const LOOKS = 64;

/** The share at which a stretch comes nearest to a point. */
export function shareNear(stretch: Stretch, p: Point): number {
  const away = (t: number) => distance(pointAt(stretch, t), p);
  let best = 0;
  for (let i = 1; i <= LOOKS; i++) if (away(i / LOOKS) < away(best)) best = i / LOOKS;
  let [low, high] = [Math.max(0, best - 1 / LOOKS), Math.min(1, best + 1 / LOOKS)];
  while (high - low > SAME_SHARE) {
    const third = (high - low) / 3;
    if (away(low + third) < away(high - third)) high -= third;
    else low += third;
  }
  return (low + high) / 2;
}

/** A stretch between two shares of it, in the same direction. */
export function partOf(stretch: Stretch, t0: number, t1: number): Stretch {
  if (t0 === 0 && t1 === 1) return stretch;
  const from = t0 === 0 ? stretch.from : pointAt(stretch, t0);
  const to = t1 === 1 ? stretch.to : pointAt(stretch, t1);
  switch (stretch.kind) {
    case 'line':
      return lineTo(from, to);
    case 'arc':
      return {
        ...stretch,
        from,
        to,
        start: stretch.start + stretch.sweep * t0,
        sweep: stretch.sweep * (t1 - t0),
      };
    case 'cubic': {
      const third = (t1 - t0) / 3;
      const h1 = add(from, scale(paceAt(stretch, t0), third));
      return { kind: 'cubic', from, h1, h2: subtract(to, scale(paceAt(stretch, t1), third)), to };
    }
  }
}

/** The same stretch walked the other way. */
export function reversed(stretch: Stretch): Stretch {
  const { from: to, to: from } = stretch;
  if (stretch.kind === 'line') return lineTo(from, to);
  if (stretch.kind === 'cubic') return { kind: 'cubic', from, h1: stretch.h2, h2: stretch.h1, to };
  return { ...stretch, from, to, start: stretch.start + stretch.sweep, sweep: -stretch.sweep };
}

/** Shares well inside a stretch at which it is farthest to a side, in order. */
export const turnsOf = (stretch: Stretch): number[] =>
  allTurns(stretch)
    .filter((t) => t > SAME_SHARE && t < 1 - SAME_SHARE)
    .sort((a, b) => a - b);

const asSawn = (stretch: Stretch): Stretch =>
  stretch.kind === 'arc' && stretch.turned ? { ...stretch, start: stretch.start + stretch.turned } : stretch;

function allTurns(stretch: Stretch): number[] {
  if (stretch.kind === 'line') return [];
  if (stretch.kind === 'cubic') return turnsOfCubic(stretch.from, stretch.h1, stretch.h2, stretch.to);
  const { start, sweep } = stretch;
  const [low, high] = sweep > 0 ? [start, start + sweep] : [start + sweep, start];
  const turns: number[] = [];
  for (let a = Math.ceil(low / 90) * 90; a < high; a += 90) turns.push((a - start) / sweep);
  return turns;
}

/**
 * The shares between which a stretch is made straight, both ends among them: it strays by `tolerance` at most, and
 * where it is farthest out it is met, so that what stands for it is as wide and as high as it is, as it is sawn.
 */
export function sharesOf(stretch: Stretch, tolerance: Mm = FLATNESS): number[] {
  const turns = [0, ...turnsOf(asSawn(stretch)), 1];
  const shares = turns.slice(1).flatMap((to, i) => {
    const from = at(turns, i);
    const chords = chordsOf(partOf(stretch, from, to), tolerance);
    return Array.from({ length: chords }, (_, j) => from + ((to - from) * j) / chords);
  });
  return [...shares, 1];
}

/** How many equal shares a stretch is made straight in. */
function chordsOf(stretch: Stretch, tolerance: Mm): number {
  if (stretch.kind === 'line') return 1;
  if (stretch.kind === 'cubic') {
    const { from, h1, h2, to } = stretch;
    return chordsOfCubic(from, h1, h2, to, tolerance);
  }
  // A chord over the same angle strays most where an ellipse is widest: as on the circle of that radius.
  const widest = chordAngle(Math.max(stretch.rx, stretch.ry), tolerance);
  return Math.max(1, Math.ceil(Math.abs(stretch.sweep) / widest - SAME_LENGTH));
}

/**
 * Length along the stretch, to the last digits; of ellipses and smooth ones by Gauss's rule, halved until it stays the
 * same, between the places where it turns: where a smooth one turns back on its line, its pace has a kink.
 */
export function lengthOf(stretch: Stretch): Mm {
  if (stretch.kind === 'line') return distance(stretch.from, stretch.to);
  if (stretch.kind === 'arc' && stretch.rx === stretch.ry)
    return Math.abs(radians(stretch.sweep)) * stretch.rx;
  return integral((t) => length(paceAt(stretch, t)), [0, ...turnsOf(stretch), 1]);
}

/**
 * Area swept by the line from `about` to a point that walks the stretch, to the left where it is more than 0. Of a
 * closed loop they add up to its area (Green).
 */
export function sweptArea(stretch: Stretch, about: Point): number {
  const from = subtract(stretch.from, about);
  const to = subtract(stretch.to, about);
  if (stretch.kind === 'line') return cross(from, to) / 2;
  if (stretch.kind === 'arc') {
    return (cross(from, to) + stretch.rx * stretch.ry * overSine(radians(stretch.sweep))) / 2;
  }
  const h1 = subtract(stretch.h1, about);
  const h2 = subtract(stretch.h2, about);
  const near = cross(from, h1) + cross(h2, to);
  return (6 * near + 3 * (cross(from, h2) + cross(h1, h2) + cross(h1, to)) + cross(from, to)) / 20;
}

/** An angle less its sine: the segment between an arc and its chord. Small ones by the series, where the difference has no digits. */
function overSine(a: number): number {
  if (Math.abs(a) > 0.2) return a - Math.sin(a);
  let term = (a * a * a) / 6;
  let sum = 0;
  for (let n = 4; n < 16; n += 2) {
    sum += term;
    term *= (-a * a) / (n * (n + 1));
  }
  return sum;
}

/** Nodes and weights of Gauss's rule of eight points on -1 to 1 (Abramowitz and Stegun, table 25.4). */
const GAUSS = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
] as const;
/** Halvings of a stretch at most. */
const DEEPEST = 16;

function gauss(f: (t: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return half * GAUSS.reduce((sum, [x, w]) => sum + w * (f(middle - half * x) + f(middle + half * x)), 0);
}

/** Over all spans between some shares of a stretch, from the first to the last. */
function integral(f: (t: number) => number, shares: readonly number[]): number {
  const spans = shares
    .slice(1)
    .map((to, i) => ({ from: at(shares, i), to, all: gauss(f, at(shares, i), to) }));
  // Measured by all of it: near a turn, where the stretch stands still, a share of so little is beneath what numbers tell.
  // A thousandth of what is asked: a span and its halves can agree by chance while both are a little wrong.
  const enough = (DUST / 1000) * Math.abs(spans.reduce((sum, { all }) => sum + all, 0));
  const halves = (a: number, b: number, whole: number, depth: number): number => {
    const m = (a + b) / 2;
    const [left, right] = [gauss(f, a, m), gauss(f, m, b)];
    if (depth === 0 || Math.abs(left + right - whole) <= enough * (b - a)) return left + right;
    return halves(a, m, left, depth - 1) + halves(m, b, right, depth - 1);
  };
  return spans.reduce((sum, { from, to, all }) => sum + halves(from, to, all, DEEPEST), 0);
}
