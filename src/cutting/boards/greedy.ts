import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../at.ts';
import type { Budget } from '../budget.ts';
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

/** Best-fit decreasing: each piece, longest first, into the open board that it leaves the least room in. */
export function bestFit(p: Problem, rest: Rest): Load[] {
  const open: { bin: number; counts: number[]; room: number }[] = [];
  const free = [...rest.free];
  const cheapest = byNeed(p);
  p.items.forEach((item, i) => {
    for (let copy = at(rest.need, i); copy > 0; copy--) {
      let target: (typeof open)[number] | null = null;
      for (const load of open) {
        if (load.room + SAME_LENGTH < item.size || (target !== null && load.room >= target.room)) continue;
        load.counts[i] = at(load.counts, i) + 1;
        if (p.joints.constant !== null || fits(p, load.counts, pick(p.bins, load.bin).capacity))
          target = load;
        load.counts[i] = at(load.counts, i) - 1;
      }
      if (target === null) {
        const bin = cheapest.find(
          (b) => at(free, b) > 0 && pick(p.bins, b).capacity + SAME_LENGTH >= item.length,
        );
        if (bin === undefined) continue;
        free[bin] = at(free, bin) - 1;
        target = { bin, counts: nothing(p), room: pick(p.bins, bin).room };
        open.push(target);
      }
      target.counts[i] = at(target.counts, i) + 1;
      target.room -= item.size;
    }
  });
  return open.map(({ bin, counts }) => ({ bin, counts }));
}

/** Nodes for one board of `fillBoards`: enough to fill most exactly, few enough to try many orders. */
const BOARD_SHARE = 0.02;

/**
 * Fills board after board: the longest piece left goes in, and the rest of the board is filled with the
 * most worth (minimum bin slack, when worth is size). Among boards the one with the most worth for its
 * price is taken; owned ones cost nothing and come first.
 */
export function fillBoards(p: Problem, rest: Rest, worth: readonly number[], budget: Budget): Load[] | null {
  const need = [...rest.need];
  const free = [...rest.free];
  const loads: Load[] = [];
  const bins = byNeed(p);
  let ranked = byRate(p, need, worth);
  while (need.some((n) => n > 0)) {
    if (budget.done()) return null;
    const longest = need.findIndex((n) => n > 0);
    const best = bestBoard(p, bins, need, free, ranked, longest, budget);
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
  longest: number,
  budget: Budget,
): Load | null {
  let best: Load | null = null;
  let bestRate = -1;
  const left = totalOf(need);
  for (const b of bins) {
    if (at(free, b) <= 0) continue;
    const bin = pick(p.bins, b);
    // Owned stretches take what suits them best; a bought board starts with the longest piece.
    const must = bin.weight === 0 ? -1 : longest;
    const { counts, value } = fill(p, bin, need, ranked, budget.part(BOARD_SHARE), must);
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
