import { at, firstFrom, pick, real, whole } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import { keyOf, type Lying } from './ends.ts';
import { leastGapsOf } from './leastGaps.ts';
import { type Net, netOf, turnsFrom, type Way } from './net.ts';
import { type Row, type Rows, rowsOf } from './rows.ts';

/** Pieces with alike ends in all their ways of lying: all that matters for who may lie beside whom. */
export type Shape = readonly Lying[];

export const shapeKey = (shape: Shape): string => shape.map(keyOf).join(' ');

/** Whether pieces fit; `open`: no row was found in which they do, and none was proved impossible. */
export type Fit = 'yes' | 'no' | 'open';

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
  readonly net: Net;
  /** Ways that may lie to the right of a way, those that go best with its end first, as far as they are kept. */
  readonly followers: (way: number) => Int32Array;
  /** Takes note of a row that was found elsewhere, as the ways in which its pieces lie from left to right. */
  readonly learn: (ways: readonly number[]) => void;
  /** Charges the work of weighing so many pairs of neighbors. */
  readonly charge: (pairs: number, budget: Budget) => void;
  /** How often a fit was left open. */
  readonly open: () => number;
  /** Least room found for a row of so many pieces of each shape, and among those rows the fewest turns. */
  row(counts: readonly number[]): Row;
  /** Whether there is a row with gaps of no more than `room`; ordering pieces is work of the budget. */
  fit(counts: readonly number[], room: Mm, budget: Budget): Fit;
}

/** Rows with more states than this are not put in order exactly, and not while searching. */
const MOST_STATES = 30_000;
const SEARCH_STATES = 4000;
/** First pieces tried while searching, and for a row that is cut: a multiple, so that they are among these. */
const STARTS = 3;
const MOST_STARTS = 16 * STARTS;
/** Pairs of neighbors that are weighed in the time of one node of a search. */
const PAIRS = 300;
/** Counts kept in all of the rows remembered. */
const MOST_KNOWN = 10_000_000;
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
  const rows = rowsOf(net);
  const leastGaps = leastGapsOf(net);
  const learned = new Map<string, Row>();
  const known = (counts: readonly number[]) => learned.get(counts.join());
  const nearIn = remembered((counts) => rows.nearest(counts, STARTS).gaps);
  const exactIn = remembered((counts) => rows.exact(counts).gaps);
  const followers: Int32Array[] = [];
  const rowOf = remembered((counts) => bestRow(rows, counts));
  let open = 0;
  let charged = 0;
  const charge = (pairs: number, budget: Budget) => {
    rows.work += pairs;
    for (; charged + PAIRS <= rows.work; charged += PAIRS) budget.spend();
  };
  return {
    constant: widest - least <= SAME ? (ways.length === 0 ? 0 : net.gap(0, 0)) : null,
    widest: Math.max(0, widest),
    half: net.waysOf.map((list) =>
      list.reduce((low, w) => Math.min(low, real(halfLeft, w) + real(halfRight, w)), Infinity),
    ),
    open: () => open,
    spare: ways.length === 0 ? 0 : greatest(halfLeft) + greatest(halfRight),
    net,
    charge,
    followers: (way) => {
      followers[way] ??= followersOf(net, way);
      return followers[way];
    },
    learn: (list) => {
      const counts = net.waysOf.map(() => 0);
      for (const w of list) {
        const { shape } = pick(ways, w);
        counts[shape] = at(counts, shape) + 1;
      }
      const key = counts.join();
      const row = rows.measured(list);
      const before = learned.get(key);
      if (before === undefined || row.gaps < before.gaps) learned.set(key, row);
    },
    row: (counts) => {
      const found = rowOf(counts);
      const told = known(counts);
      return told !== undefined && told.gaps < found.gaps - SAME ? told : found;
    },
    fit: (counts, room, budget) => {
      rows.work += counts.length;
      if (leastGaps(counts) > room + SAME) {
        charge(0, budget);
        return 'no';
      }
      const near = Math.min(nearIn(counts), known(counts)?.gaps ?? Infinity);
      const small = near > room && rows.states(counts) <= SEARCH_STATES;
      const gaps = small ? exactIn(counts) : near;
      charge(0, budget);
      if (gaps <= room) return 'yes';
      if (small) return 'no';
      open += 1;
      return 'open';
    },
  };
}

const greatest = (list: Float64Array): number => list.reduce((a, b) => Math.max(a, b), -Infinity);

function bestRow(rows: Rows, counts: readonly number[]): Row {
  return rows.states(counts) > MOST_STATES ? rows.nearest(counts, MOST_STARTS) : rows.exact(counts);
}

/** Followers kept of each way. */
const MOST_FOLLOWERS = 400;

/** Ways by what they leave beside a way, least first: sorted as bare numbers, then each to its place. */
function followersOf({ shareLeft, gap }: Net, way: number): Int32Array {
  const over = shareLeft.map((share, b) => gap(way, b) - share);
  const sorted = over.slice().sort();
  const order = new Int32Array(sorted.length);
  const taken = new Int32Array(sorted.length);
  over.forEach((value, b) => {
    const first = firstFrom(sorted, value);
    order[first + whole(taken, first)] = b;
    taken[first] = whole(taken, first) + 1;
  });
  return order.slice(0, MOST_FOLLOWERS);
}

/** Keeps what was found for each set of shapes. */
function remembered<T>(find: (counts: readonly number[]) => T): (counts: readonly number[]) => T {
  const known = new Map<string, T>();
  return (counts) => {
    const key = counts.join();
    const before = known.get(key);
    if (before !== undefined) return before;
    if (known.size * counts.length > MOST_KNOWN) known.clear();
    const found = find(counts);
    known.set(key, found);
    return found;
  };
}

/** The extremes of the gaps of all pairs, and half the least gap at either end of each way. */
function gapsOf({ ways, gap }: Net) {
  const halfLeft = new Float64Array(ways.length).fill(Infinity);
  const halfRight = new Float64Array(ways.length).fill(Infinity);
  let least = ways.length === 0 ? 0 : Infinity;
  let widest = ways.length === 0 ? 0 : -Infinity;
  for (let a = 0; a < ways.length; a++) {
    let nearest = Infinity;
    for (let b = 0; b < ways.length; b++) {
      const g = gap(a, b);
      if (g < nearest) nearest = g;
      if (g > widest) widest = g;
      if (g / 2 < real(halfLeft, b)) halfLeft[b] = g / 2;
    }
    halfRight[a] = nearest / 2;
    least = Math.min(least, nearest);
  }
  return { least, widest, halfLeft, halfRight };
}
