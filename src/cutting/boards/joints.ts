import type { Mm } from '../../measure/units.ts';
import { at, pick } from '../at.ts';
import { keyOf, type Lying } from './ends.ts';
import { type Net, netOf, turnsFrom, type Way } from './net.ts';

/** Pieces with alike ends in all their ways of lying: all that matters for who may lie beside whom. */
export type Shape = readonly Lying[];

export const shapeKey = (shape: Shape): string => shape.map(keyOf).join(' ');

/** One piece of a row: its shape and which way of lying. */
interface Placed {
  readonly shape: number;
  readonly lying: number;
}

/** A row of pieces in order, the sum of the distances between them and the turns of the saw. */
interface Row {
  readonly gaps: Mm;
  readonly turns: number;
  readonly order: readonly Placed[];
}

/** What pieces of given shapes take beside each other. */
export interface Joints {
  /** The gap that all pairs have, where all are alike (square ends): order does not matter then. */
  readonly constant: Mm | null;
  /** The widest gap that any two can have. */
  readonly widest: Mm;
  /** Half gaps of each shape's ends: their sum over a row never exceeds the row's gaps. */
  readonly half: readonly Mm[];
  /** Added to a board's capacity, since its two outer ends take no gap. */
  readonly spare: Mm;
  /** False once a row was not put in order exactly. */
  readonly exact: () => boolean;
  /** Least room taken by a row of so many pieces of each shape, and among those rows the fewest turns. */
  row(counts: readonly number[]): Row;
  /** What the gaps of such a row add up to, never less than those of `row`; quicker in a long search. */
  gaps(counts: readonly number[]): Mm;
}

/** Rows with more states than this are put in order greedily. */
const MOST_STATES = 30_000;
/**
 * Pairs of neighbors weighed while searching, in all: for exact orders, then for orders from every first
 * piece. After that a row is ordered from one first piece only, so that a search costs what its nodes cost.
 */
const EXACT_PAIRS = 2_000_000;
const ALL_PAIRS = 20_000_000;
const SAME: Mm = 1e-7;

export function jointsOf(shapes: readonly Shape[]): Joints {
  const ways: Way[] = shapes.flatMap((lyings, shape) =>
    lyings.map((ends, lying) => ({
      shape,
      lying,
      ends,
      within: turnsFrom(ends.left, ends.right),
    })),
  );
  const net = netOf(
    ways,
    shapes.map((_, s) => ways.flatMap((way, w) => (way.shape === s ? [w] : []))),
  );
  const { least, widest, halfLeft, halfRight } = gapsOf(net);
  const constant = widest - least <= SAME ? (ways.length === 0 ? 0 : net.gap(0, 0)) : null;
  const tails: Tails = { known: new Map(), pairs: 0 };
  let pairs = 0;
  let exact = true;

  const row = (counts: readonly number[], quick: boolean): Row => {
    const some = shapesPresent(counts);
    const present = some.flatMap((s) => pick(net.waysOf, s));
    const states = some.reduce((all, s) => all * (at(counts, s) + 1), present.length);
    if (states <= MOST_STATES && !(quick && tails.pairs > EXACT_PAIRS)) {
      return exactOrder(net, counts, tails);
    }
    if (constant === null) exact = false;
    const one = quick && pairs > ALL_PAIRS;
    const pieces = some.reduce((sum, s) => sum + at(counts, s), 0);
    pairs += pieces * present.length * (one ? 1 : present.length);
    return greedyOrder(net, counts, one ? present.slice(0, 1) : present);
  };
  return {
    constant,
    widest: Math.max(0, widest),
    half: net.waysOf.map((list) =>
      list.reduce((low, w) => Math.min(low, at(halfLeft, w) + at(halfRight, w)), Infinity),
    ),
    exact: () => exact,
    spare: ways.length === 0 ? 0 : greatest(halfLeft) + greatest(halfRight),
    row: (counts) => row(counts, false),
    gaps: (counts) => row(counts, true).gaps,
  };
}

const greatest = (list: readonly number[]): number => list.reduce((a, b) => Math.max(a, b), -Infinity);

/** The extremes of the gaps of all pairs, and half the least gap at either end of each way. */
function gapsOf({ ways, gap }: Net) {
  const halfLeft = ways.map(() => Infinity);
  const halfRight = ways.map(() => Infinity);
  let least = ways.length === 0 ? 0 : Infinity;
  let widest = ways.length === 0 ? 0 : -Infinity;
  for (let a = 0; a < ways.length; a++) {
    for (let b = 0; b < ways.length; b++) {
      const g = gap(a, b);
      if (g < least) least = g;
      if (g > widest) widest = g;
      if (g / 2 < at(halfRight, a)) halfRight[a] = g / 2;
      if (g / 2 < at(halfLeft, b)) halfLeft[b] = g / 2;
    }
  }
  return { least, widest, halfLeft, halfRight };
}

interface Tail {
  readonly gaps: Mm;
  readonly turns: number;
  readonly next: number;
}

/** Ends of rows, kept from one call to the next, since smaller rows are the ends of larger ones. */
interface Tails {
  readonly known: Map<string, Tail>;
  /** Pairs of neighbors weighed so far. */
  pairs: number;
}

/** Ends of rows remembered. */
const MOST_TAILS = 300_000;

const better = (gaps: Mm, turns: number, than: Pick<Tail, 'gaps' | 'turns'>): boolean =>
  gaps < than.gaps - SAME || (gaps <= than.gaps + SAME && turns < than.turns);

/** Shapes of which there are any. */
function shapesPresent(counts: readonly number[]): number[] {
  const present: number[] = [];
  for (let s = 0; s < counts.length; s++) if (at(counts, s) > 0) present.push(s);
  return present;
}

/** Dynamic program over how many of each shape are still to come and the piece before them. */
function exactOrder(net: Net, counts: readonly number[], tails: Tails): Row {
  const { ways, waysOf, gap, turns } = net;
  const present = shapesPresent(counts);
  const left = present.map((s) => at(counts, s));
  if (tails.known.size > MOST_TAILS) tails.known.clear();
  const tail = (before: number): Tail => {
    let key = `${before}`;
    for (let k = 0; k < left.length; k++) if (at(left, k) > 0) key += `,${at(present, k)}:${at(left, k)}`;
    const known = tails.known.get(key);
    if (known) return known;
    let best: Tail = { gaps: Infinity, turns: Infinity, next: -1 };
    let ended = true;
    for (let k = 0; k < left.length; k++) {
      if (at(left, k) === 0) continue;
      ended = false;
      left[k] = at(left, k) - 1;
      for (const w of pick(waysOf, at(present, k))) {
        const rest = tail(w);
        tails.pairs += 1;
        const gaps = rest.gaps + (before < 0 ? 0 : gap(before, w));
        const turned = rest.turns + pick(ways, w).within + (before < 0 ? 0 : turns(before, w));
        if (better(gaps, turned, best)) best = { gaps, turns: turned, next: w };
      }
      left[k] = at(left, k) + 1;
    }
    if (ended) best = { gaps: 0, turns: 0, next: -1 };
    tails.known.set(key, best);
    return best;
  };
  const whole = tail(-1);
  const order: Placed[] = [];
  let step = whole;
  while (step.next >= 0) {
    const { shape, lying } = pick(ways, step.next);
    order.push({ shape, lying });
    const k = present.indexOf(shape);
    left[k] = at(left, k) - 1;
    step = tail(step.next);
  }
  return { gaps: whole.gaps, turns: whole.turns, order };
}

/** Nearest neighbor from each of the given first pieces: never less than the exact row takes, so still safe. */
function greedyOrder(net: Net, counts: readonly number[], starts: readonly number[]): Row {
  const { ways, waysOf, gap, turns } = net;
  const present = shapesPresent(counts);
  let best: { gaps: Mm; turns: number; row: readonly number[] } = {
    gaps: Infinity,
    turns: Infinity,
    row: [],
  };
  for (const start of starts) {
    const left = present.map((s) => at(counts, s));
    const row: number[] = [];
    let sum = 0;
    let turned = 0;
    let before = -1;
    let next = start;
    while (next >= 0) {
      const way = pick(ways, next);
      if (before >= 0) {
        sum += gap(before, next);
        turned += turns(before, next);
      }
      turned += way.within;
      row.push(next);
      const k = present.indexOf(way.shape);
      left[k] = at(left, k) - 1;
      before = next;
      next = -1;
      let nearest = Infinity;
      for (let s = 0; s < left.length; s++) {
        if (at(left, s) === 0) continue;
        for (const w of pick(waysOf, at(present, s))) {
          const g = gap(before, w);
          if (g < nearest - SAME) {
            nearest = g;
            next = w;
          }
        }
      }
    }
    if (better(sum, turned, best)) best = { gaps: sum, turns: turned, row };
  }
  const order = best.row.map((w) => ({ shape: pick(ways, w).shape, lying: pick(ways, w).lying }));
  return { gaps: best.gaps, turns: best.turns, order };
}
