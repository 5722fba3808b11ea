import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Budget } from '../budget.ts';
import { growRows } from './grow.ts';
import { byRate, fill, type Ranked } from './knapsack.ts';
import { type Counts, demand, fits, type Load, nothing, type Problem, totalOf } from './problem.ts';

/** What is still to cut and which stretches are still free. */
export interface Rest {
  readonly need: number[];
  readonly free: number[];
}

export const restOf = (p: Problem): Rest => ({ need: demand(p), free: p.bins.map((b) => b.limit) });

export const afterLoads = (rest: Rest, loads: readonly Load[]): Rest => {
  const next = { need: [...rest.need], free: [...rest.free] };
  for (const { bin, counts } of loads) {
    next.free[bin] = at(next.free, bin) - 1;
    counts.forEach((n, i) => {
      next.need[i] = Math.max(0, at(next.need, i) - n);
    });
  }
  return next;
};

/** Bins in the order they are opened: owned before bought, tightest before wide. */
const byNeed = (p: Problem): number[] =>
  p.bins
    .map((_, b) => b)
    .sort(
      (a, b) =>
        pick(p.bins, a).weight - pick(p.bins, b).weight ||
        pick(p.bins, a).capacity - pick(p.bins, b).capacity ||
        a - b,
    );

/**
 * Best-fit decreasing: each piece, longest first, into the open board that it leaves the least room in. Boards
 * are kept fullest first, so that the first one that takes the piece is it.
 */
export function bestFit(p: Problem, rest: Rest, budget: Budget): Load[] {
  const open: { bin: number; counts: number[]; room: number }[] = [];
  const free = [...rest.free];
  const cheapest = byNeed(p);
  const takes = ({ bin, counts, room }: (typeof open)[number], i: number): boolean => {
    if (room + SAME_LENGTH < pick(p.items, i).size) return false;
    counts[i] = at(counts, i) + 1;
    const fit = p.joints.constant !== null || fits(p, counts, pick(p.bins, bin).capacity, budget) === 'yes';
    counts[i] = at(counts, i) - 1;
    return fit;
  };
  p.items.forEach((item, i) => {
    for (let copy = at(rest.need, i); copy > 0; copy--) {
      let k = open.findIndex((load) => takes(load, i));
      if (k < 0) {
        const bin = cheapest.find(
          (b) => at(free, b) > 0 && pick(p.bins, b).capacity + SAME_LENGTH >= item.length,
        );
        if (bin === undefined) continue;
        free[bin] = at(free, bin) - 1;
        k = open.push({ bin, counts: nothing(p), room: pick(p.bins, bin).room }) - 1;
      }
      const target = pick(open, k);
      target.counts[i] = at(target.counts, i) + 1;
      target.room -= item.size;
      const before = open.findIndex((load) => load.room > target.room);
      if (before >= 0 && before < k) open.splice(before, 0, ...open.splice(k, 1));
    }
  });
  return open.map(({ bin, counts }) => ({ bin, counts }));
}

/** Nodes for one board of `fillBoards`: enough to fill most exactly, few enough to try many orders. */
const BOARD_SHARE = 0.02;

/** Fewer kinds of ends find their partners whichever pieces are chosen. */
export const MANY_SHAPES = 8;
/** A row that leaves less than this share of its board is not looked for again by lengths. */
const FULL = 0.003;

/**
 * Fills board after board: the longest piece left goes in, and the rest of the board is filled with the
 * most worth (minimum bin slack, when worth is size). Among boards the one with the most worth for its
 * price is taken; owned ones cost nothing and come first.
 */
export function fillBoards(
  p: Problem,
  rest: Rest,
  worth: readonly number[],
  budget: Budget,
  soon = false,
): Load[] | null {
  const need = [...rest.need];
  const free = [...rest.free];
  const loads: Load[] = [];
  const bins = byNeed(p);
  let ranked = byRate(p, need, worth);
  while (need.some((n) => n > 0)) {
    if (budget.done()) return null;
    const longest = need.findIndex((n) => n > 0);
    const best = bestBoard(p, bins, need, free, ranked, worth, longest, budget, soon);
    if (best === null) return null;
    loads.push(best);
    free[best.bin] = at(free, best.bin) - 1;
    best.counts.forEach((n, i) => {
      need[i] = at(need, i) - n;
    });
    // What is used up only stands in the way.
    if (need.reduce((n, c) => (c > 0 ? n + 1 : n), 0) < ranked.items.length / 2)
      ranked = byRate(p, need, worth);
  }
  return loads;
}

function bestBoard(
  p: Problem,
  bins: readonly number[],
  need: Counts,
  free: readonly number[],
  ranked: Ranked,
  worth: readonly number[],
  longest: number,
  budget: Budget,
  soon: boolean,
): Load | null {
  let best: Load | null = null;
  let bestRate = -1;
  const left = totalOf(need);
  const open = bins.filter((b) => at(free, b) > 0);
  // Owned stretches take what suits them best; a bought board starts with the longest piece.
  const mustOn = (b: number): number => (pick(p.bins, b).weight === 0 ? -1 : longest);
  const bought = open.filter((b) => mustOn(b) >= 0);
  const grow = (of: readonly number[], must: number) =>
    p.shapes < MANY_SHAPES || of.length === 0
      ? []
      : growRows(
          p,
          of.map((b) => pick(p.bins, b).capacity),
          need,
          worth,
          must,
          budget,
        );
  const grown = grow(bought, longest);
  for (const b of open) {
    const bin = pick(p.bins, b);
    const must = mustOn(b);
    const row = (must < 0 ? grow([b], must)[0] : grown[bought.indexOf(b)]) ?? null;
    const full = row !== null && (soon || row.rest <= bin.capacity * FULL);
    const chosen = full ? null : fill(p, bin, need, ranked, budget.part(BOARD_SHARE), must);
    const { counts, value } =
      row !== null && row.value > (chosen?.value ?? 0) ? row : (chosen ?? { counts: [], value: 0 });
    if (totalOf(counts) === 0) continue;
    if (bin.weight === 0) return { bin: b, counts };
    const last = left === totalOf(counts);
    const rate = (last ? 2 : 1) * (value / bin.weight);
    if (rate > bestRate * (1 + 1e-12)) {
      best = { bin: b, counts };
      bestRate = rate;
    }
  }
  return best;
}
