import type { Mm } from '../../measure/units.ts';
import { at, pick } from '../at.ts';
import { gapBetween, keyOf, type Lying, shareCut } from './ends.ts';

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
  /** False once a row was too long to be put in order exactly. */
  readonly exact: () => boolean;
  /** Least room taken by a row of so many pieces of each shape, and among those rows the fewest turns. */
  row(counts: readonly number[]): Row;
}

/** Rows with more states than this are put in order greedily. */
const MOST_STATES = 30_000;
/** Ends of rows remembered. */
const MOST_TAILS = 300_000;
const SAME: Mm = 1e-7;

interface Way {
  readonly shape: number;
  readonly lying: number;
  readonly ends: Lying;
  /** Turns of the saw from this piece's left end to its right end. */
  readonly within: number;
}

const differ = (a: readonly string[], b: readonly string[]): number => (a.at(-1) === b[0] ? 0 : 1);

export function jointsOf(shapes: readonly Shape[]): Joints {
  const ways: Way[] = shapes.flatMap((lyings, shape) =>
    lyings.map((ends, lying) => ({
      shape,
      lying,
      ends,
      within: differ(ends.left.settings, ends.right.settings) + ends.right.settings.length - 1,
    })),
  );
  const n = ways.length;
  const gap = ways.flatMap((a) => ways.map((b) => gapBetween(a.ends.right, b.ends.left)));
  const turns = ways.flatMap((a) =>
    ways.map((b) =>
      shareCut(a.ends.right, b.ends.left)
        ? 0
        : differ(a.ends.right.settings, b.ends.left.settings) + b.ends.left.settings.length - 1,
    ),
  );
  const first = gap[0] ?? 0;
  const constant = gap.every((g) => Math.abs(g - first) <= SAME) ? first : null;
  const halfRight = ways.map((_, a) => Math.min(...ways.map((_, b) => at(gap, a * n + b))) / 2);
  const halfLeft = ways.map((_, b) => Math.min(...ways.map((_, a) => at(gap, a * n + b))) / 2);
  const waysOf = shapes.map((_, s) => ways.map((_, w) => w).filter((w) => pick(ways, w).shape === s));
  const net: Net = { ways, waysOf, gap, turns };
  const tails = new Map<string, Tail>();
  let exact = true;

  const row = (counts: readonly number[]): Row => {
    const states = counts.reduce((all, c) => all * (c + 1), n);
    if (states <= MOST_STATES) return exactOrder(net, counts, tails);
    if (constant === null) exact = false;
    return greedyOrder(net, counts);
  };
  return {
    constant,
    widest: Math.max(0, ...gap),
    half: waysOf.map((list) => Math.min(...list.map((w) => at(halfLeft, w) + at(halfRight, w)))),
    exact: () => exact,
    spare: n === 0 ? 0 : Math.max(...halfLeft) + Math.max(...halfRight),
    row,
  };
}

/** Every way of lying, with what each pair of neighbors takes: `gap[a * ways + b]`, b to the right of a. */
interface Net {
  readonly ways: readonly Way[];
  readonly waysOf: readonly (readonly number[])[];
  readonly gap: readonly number[];
  readonly turns: readonly number[];
}

interface Tail {
  readonly gaps: Mm;
  readonly turns: number;
  readonly next: number;
}

const better = (gaps: Mm, turns: number, than: Tail): boolean =>
  gaps < than.gaps - SAME || (gaps <= than.gaps + SAME && turns < than.turns);

/**
 * Dynamic program over how many of each shape are still to come and the piece before them. `memo` is kept
 * from one call to the next, since smaller rows are the ends of larger ones.
 */
function exactOrder(net: Net, counts: readonly number[], memo: Map<string, Tail>): Row {
  const { ways, waysOf, gap, turns } = net;
  const left = [...counts];
  if (memo.size > MOST_TAILS) memo.clear();
  const tail = (before: number): Tail => {
    const key = `${before}:${left.join()}`;
    const known = memo.get(key);
    if (known) return known;
    let best: Tail = { gaps: Infinity, turns: Infinity, next: -1 };
    let ended = true;
    for (let s = 0; s < left.length; s++) {
      if (at(left, s) === 0) continue;
      ended = false;
      left[s] = at(left, s) - 1;
      for (const w of pick(waysOf, s)) {
        const rest = tail(w);
        const edge = before < 0 ? -1 : before * ways.length + w;
        const gaps = rest.gaps + (edge < 0 ? 0 : at(gap, edge));
        const turned = rest.turns + pick(ways, w).within + (edge < 0 ? 0 : at(turns, edge));
        if (better(gaps, turned, best)) best = { gaps, turns: turned, next: w };
      }
      left[s] = at(left, s) + 1;
    }
    if (ended) best = { gaps: 0, turns: 0, next: -1 };
    memo.set(key, best);
    return best;
  };
  const whole = tail(-1);
  const order: Placed[] = [];
  let step = whole;
  while (step.next >= 0) {
    const { shape, lying } = pick(ways, step.next);
    order.push({ shape, lying });
    left[shape] = at(left, shape) - 1;
    step = tail(step.next);
  }
  return { gaps: whole.gaps, turns: whole.turns, order };
}

/** Nearest neighbor from every possible first piece: never less than the exact row takes, so still safe. */
function greedyOrder({ ways, waysOf, gap, turns }: Net, counts: readonly number[]): Row {
  let best: Row = { gaps: Infinity, turns: Infinity, order: [] };
  for (const start of ways.keys()) {
    if (at(counts, pick(ways, start).shape) === 0) continue;
    const left = [...counts];
    const row: number[] = [];
    let sum = 0;
    let turned = 0;
    let next = start;
    while (next >= 0) {
      const way = pick(ways, next);
      const before = row.at(-1);
      if (before !== undefined) {
        sum += at(gap, before * ways.length + next);
        turned += at(turns, before * ways.length + next);
      }
      turned += way.within;
      row.push(next);
      left[way.shape] = at(left, way.shape) - 1;
      const here = next;
      next = -1;
      for (const w of waysOf.flatMap((list, s) => (at(left, s) > 0 ? list : []))) {
        const d = next < 0 ? -1 : at(gap, here * ways.length + w) - at(gap, here * ways.length + next);
        if (d < -SAME) next = w;
      }
    }
    if (better(sum, turned, { ...best, next: -1 })) {
      best = {
        gaps: sum,
        turns: turned,
        order: row.map((w) => ({ shape: pick(ways, w).shape, lying: pick(ways, w).lying })),
      };
    }
  }
  return best;
}
