import { lerp, subtract, turnBetween } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import type { Deg, Mm } from '../measure/units.ts';
import type { SetLine } from './setting.ts';

/** A place on a baseline, and how far what stands there is turned. */
export interface Stand {
  readonly x: Mm;
  readonly y: Mm;
  /** Counterclockwise. */
  readonly turn: Deg;
}

/** What a line of text stands on. */
export interface Track {
  /** Where something stands whose middle is `along` from that of the setting and that reaches `half` to each side. */
  readonly at: (along: Mm, half: Mm) => Stand;
  /** Height of the baseline at its middle. */
  readonly baseline: Mm;
  /** Whether letters on it are turned. */
  readonly bent: boolean;
  /** Of a track that closes or ends: how long it is, as letters count it. */
  readonly length?: Mm;
  /** It has two ends; letters beyond them go straight on. */
  readonly open?: true;
  /** By how much the way turns under what reaches so far to both sides of a place. */
  readonly bend?: (along: Mm, half: Mm) => Deg;
}

/** A way is walked in steps no longer than this. */
export const STEP: Mm = 2;
/** Where letters would run into each other at a corner that is turned in, they go no farther apart than this. */
export const LEAST_STEP = 0.3;
/** A letter is turned to what it stands on over no less than this share of its cap height. */
export const LEAST_HALF = 0.1;

/** The place of a count between those of the points of a way; before the first and after the last its ends go on straight. */
export function placeOn(counts: readonly Mm[], count: Mm, pointOf: (i: number) => Point): Point {
  let [low, high] = [0, counts.length - 1];
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (pick(counts, mid) <= count) low = mid;
    else high = mid;
  }
  const [from, to] = [pick(counts, low), pick(counts, low + 1)];
  return lerp(pointOf(low), pointOf(low + 1), to > from ? (count - from) / (to - from) : 0);
}

/** By how much a way turns from one end of what stands on it to the other, a step within both. */
export function bendOf(at: (along: Mm) => Point, place: Mm, half: Mm): Deg {
  const within = Math.max(half - STEP, STEP / 2);
  const way = (middle: Mm) => subtract(at(middle + STEP / 2), at(middle - STEP / 2));
  return Math.abs(turnBetween(way(place - within), way(place + within)));
}

/** Straight lines, as they are set. */
export const straightTracks = (lines: readonly SetLine[]): Track[] =>
  lines.map(({ baseline }) => ({
    at: (x) => ({ x, y: baseline, turn: 0 }),
    baseline,
    bent: false,
  }));
