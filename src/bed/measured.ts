import { distance, midpoint } from '../geometry/point.ts';
import type { Point, Quad } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import type { Bow, Bows } from './bows.ts';

/**
 * A rectangle as a tape reads it where it was built; what is left out is taken as true. `rising` is the diagonal from
 * the lower left corner, `falling` the one from the upper left.
 */
export type Measured = { readonly [M in Reading]?: Mm | undefined } & {
  /** What each edge lies out of a string between its corners. */
  readonly bows?: Bows | undefined;
};

/** Every reading, in the order in which it is taken. */
export const READINGS = ['bottom', 'middle', 'top', 'left', 'right', 'rising', 'falling'] as const;
export type Reading = (typeof READINGS)[number];

const SIDES = ['bottom', 'top', 'left', 'right'] as const;
const DIAGONALS = ['rising', 'falling'] as const;
type Span = (typeof SIDES)[number] | (typeof DIAGONALS)[number];
type Spans = Record<Span, Mm>;

/** What a tape is trusted to over the length of a bed, a sixteenth of an inch; common practice, no source. */
export const TRUSTED: Mm = 25.4 / 16;
/** What no tape tells, half of a thirty-second of an inch; common practice, no source. */
export const UNSEEN: Mm = 25.4 / 64;
/** Edges that bow by more than this between them, half an inch, were read wrong; common practice, no source. */
const MOST_BOW: Mm = 12.7;

/** What readings come to. */
export interface Corners {
  /** The lower left one at the origin, the lower edge along x. */
  readonly corners: Quad;
  /** By how much the rising diagonal is longer; less than 0 where the falling one is. */
  readonly longer: Mm;
  /** By how much the middle is wider than the sides have it, as far as they were read: what is left for them to bow by. */
  readonly bow: Mm;
  /** Those of all edges. Where one upright edge was read beside the middle, the other one follows. */
  readonly bows: Bows;
  /** The least that the worst of the readings is off; what closes is off by nothing. */
  readonly off: Mm;
}

/** The reading that is likeliest wrong, and what it would be by the others. */
export interface Misread {
  readonly reading: Reading;
  readonly read: Mm;
  readonly would: Mm;
}

/** Corners from four sides and the rising diagonal, by two triangles on it; null where one of them cannot be. */
function cornersBy({ bottom, top, left, right, rising }: Spans): Quad | null {
  const onRising = (near: Mm, far: Mm): { readonly along: Mm; readonly out: Mm } | null => {
    const along = (near ** 2 + rising ** 2 - far ** 2) / (2 * rising);
    const square = near ** 2 - along ** 2;
    return square > 0 ? { along, out: Math.sqrt(square) } : null;
  };
  const low = onRising(bottom, right);
  const high = onRising(left, top);
  if (!low || !high) return null;
  // Turned so that the lower edge lies along x.
  const [c, s] = [low.along / bottom, low.out / bottom];
  const turned = (along: Mm, out: Mm): Point => ({ x: along * c - out * s, y: along * s + out * c });
  return [{ x: 0, y: 0 }, { x: bottom, y: 0 }, turned(rising, 0), turned(high.along, high.out)];
}

/** How much longer the falling diagonal is than the other five have it. */
function excess(spans: Spans): Mm | null {
  const corners = cornersBy(spans);
  return corners && spans.falling - distance(corners[1], corners[3]);
}

/** Where a function of `k` is 0, by secants from 0 and a small step; null where it comes to none. */
function rootOf(f: (k: number) => number | null, step: number): number | null {
  let [k, next] = [0, step];
  let was = f(k);
  for (let i = 0; i < 60; i++) {
    if (was === null || Math.abs(was) < SAME_LENGTH / 1000) return was === null ? null : k;
    const is = f(next);
    if (is === null) return null;
    const slope = (is - was) / (next - k);
    if (slope === 0) return Math.abs(is) < SAME_LENGTH ? next : null;
    [k, was, next] = [next, is, next - is / slope];
  }
  return null;
}

/** Sides lengthened and diagonals shortened by what `by` says. */
const changed = (spans: Spans, free: readonly Span[], by: (mm: Mm) => Mm): Spans => {
  const next = { ...spans };
  for (const one of free) next[one] += DIAGONALS.some((d) => d === one) ? -by(spans[one]) : by(spans[one]);
  return next;
};

/**
 * The corners that readings mean, in a rectangle that was meant to be `width` by `height`; null where the sides and a
 * diagonal make no triangle.
 *
 * Six spans between four corners are one more than they need. Where all are read they are made to close by least
 * squares: by the equilibrium of a stressed frame with both diagonals, the closing error changes with each span in
 * proportion to its length, with the other sign for diagonals; so every side is lengthened by one share of itself and
 * every diagonal shortened by the same (exact for a parallelogram, else to the second order). Where sides are not read
 * they alone give way; a diagonal that is not read follows from the rest, and where none is, both are as long as
 * each other.
 */
export function cornersOf(measured: Measured, width: Mm, height: Mm): Corners | null {
  const across = Math.hypot(width, height);
  const spans: Spans = {
    bottom: measured.bottom ?? width,
    top: measured.top ?? width,
    left: measured.left ?? height,
    right: measured.right ?? height,
    rising: measured.rising ?? across,
    falling: measured.falling ?? across,
  };
  const unread = (all: readonly Span[]) => all.filter((one) => measured[one] === undefined);
  const [sides, diagonals] = [unread(SIDES), unread(DIAGONALS)];
  const free = diagonals.length > 0 ? diagonals : sides.length > 0 ? sides : [...SIDES, ...DIAGONALS];
  const over = free.length === SIDES.length + DIAGONALS.length;
  const same = diagonals.length === 2;
  const start = same ? { ...spans, falling: spans.rising } : spans;
  const k = rootOf((share) => excess(changed(start, free, (mm) => share * mm)), 1e-6);
  const closed = k === null ? null : cornersBy(changed(start, free, (mm) => k * mm));
  if (!closed) return null;
  const off = over ? rootOf((mm) => excess(changed(spans, free, () => mm)), 1e-3) : 0;
  return {
    corners: closed,
    longer: distance(closed[0], closed[2]) - distance(closed[1], closed[3]),
    ...bowsOf(measured, closed),
    off: off === null ? Number.POSITIVE_INFINITY : Math.abs(off),
  };
}

/** Three widths tell what both upright edges bow by together; which of them does, only a string along it. */
function bowsOf({ middle, bows = {} }: Measured, corners: Quad): Pick<Corners, 'bow' | 'bows'> {
  if (middle === undefined) return { bow: 0, bows };
  const [left, right] = [bows.left?.middle, bows.right?.middle];
  const bow = middle - spanOf(corners, 'middle') - (left ?? 0) - (right ?? 0);
  if ((left === undefined) === (right === undefined)) return { bow, bows };
  const unread = left === undefined ? 'left' : 'right';
  const follows: Bow = { ...bows[unread], middle: Math.abs(bow) < UNSEEN ? 0 : bow };
  // More than edges bow by was read wrong.
  return Math.abs(bow) > MOST_BOW ? { bow, bows } : { bow: 0, bows: { ...bows, [unread]: follows } };
}

/** How far from a true rectangle: opposite sides and diagonals that differ, and edges that bow. */
function irregularity({ corners: [a, b, c, d], longer, bow }: Corners): number {
  const sides = [distance(a, b) - distance(d, c), distance(b, c) - distance(a, d)];
  return [...sides, longer, 2 * bow].reduce((sum, mm) => sum + mm * mm, 0);
}

/** Where both upright edges were read, the middle is as wide as they have it. */
const closes = (found: Corners | null): found is Corners =>
  found !== null &&
  found.off <= TRUSTED &&
  Math.abs(found.bow) <= (hasBoth(found.bows) ? 2 * TRUSTED : MOST_BOW);

const hasBoth = ({ left, right }: Bows): boolean => left?.middle !== undefined && right?.middle !== undefined;

/**
 * The reading that is likeliest wrong where all of them cannot be right: the one without which the rest comes nearest
 * to a true rectangle. A bed was meant to be one, so a reading that is off by more than the bed is out of true
 * is found by that, though any of them alone would close the figure. Null where they agree.
 */
export function misreadOf(measured: Measured, width: Mm, height: Mm): Misread | null {
  if (closes(cornersOf(measured, width, height))) return null;
  let best: { readonly score: number; readonly misread: Misread } | null = null;
  for (const reading of READINGS) {
    const read = measured[reading];
    if (read === undefined) continue;
    const without = cornersOf({ ...measured, [reading]: undefined }, width, height);
    if (!without) continue;
    const score = irregularity(without) + without.off ** 2;
    if (best && best.score <= score) continue;
    best = { score, misread: { reading, read, would: wouldRead(without, reading) } };
  }
  return best?.misread ?? null;
}

/** What a tape would read by what is known without it. */
const wouldRead = ({ corners, bows: { left, right } }: Corners, reading: Reading): Mm =>
  spanOf(corners, reading) + (reading === 'middle' ? (left?.middle ?? 0) + (right?.middle ?? 0) : 0);

/** What a tape would read between corners, their edges being straight. */
export function spanOf([a, b, c, d]: Quad, reading: Reading): Mm {
  const ends = {
    bottom: [a, b],
    middle: [midpoint(a, d), midpoint(b, c)],
    top: [d, c],
    left: [a, d],
    right: [b, c],
    rising: [a, c],
    falling: [b, d],
  } as const;
  return distance(...ends[reading]);
}
