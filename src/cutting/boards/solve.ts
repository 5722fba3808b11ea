import { at, pick } from '../../list/at.ts';
import { wholeDown } from '../../measure/round.ts';
import type { Budget } from '../budget.ts';
import { leastCover } from '../cover.ts';
import { countBound } from './bound.ts';
import { type Relaxed, relax } from './columns.ts';
import { afterLoads, bestFit, fillBoards, MANY_SHAPES, type Rest, restOf } from './greedy.ts';
import { type Load, type Problem, totalOf, weightOf } from './problem.ts';
import { search } from './search.ts';

export interface Plan {
  readonly loads: readonly Load[];
  readonly weight: number;
  /** Nothing weighs less than this. */
  readonly bound: number;
}

/** Rests of so few pieces are searched to the end instead of rounded. */
const SMALL = 14;
const DIVES = 12;

/**
 * Chooses boards and what is cut from each: quick plans, then the relaxation over patterns with its lower
 * bound, dives that round it, and a search to the end with what is left of the budget. Stops as soon as
 * plan and bound meet.
 *
 * @param soon only the quick plans, each made once
 */
export function solve(p: Problem, budget: Budget, soon = false): Plan {
  const whole = restOf(p);
  let best = covered(bestFit(p, whole, budget), whole);
  let bound = Math.max(p.roundUp(quickBound(p)), 0);
  const offer = (loads: readonly Load[] | null): boolean => {
    if (loads !== null && weightOf(p, loads) < weightOf(p, best)) best = covered(loads, whole);
    return weightOf(p, best) <= bound;
  };
  const result = (): Plan => ({
    loads: best,
    weight: weightOf(p, best),
    bound: Math.min(bound, weightOf(p, best)),
  });
  if (offer(best)) return result();
  if (soon) {
    offer(
      fillBoards(
        p,
        whole,
        p.items.map((i) => i.size),
        budget,
        true,
      ),
    );
    return result();
  }
  if (fillings(p, whole, budget.part(0.25), offer)) return result();

  const pool: Load[] = [];
  const root = relax(p, whole.need, whole.free, pool, budget.part(0.4));
  bound = Math.max(bound, p.roundUp(root.bound));
  if (offer(null)) return result();
  for (let skip = 0; skip < DIVES && !budget.done(); skip++) {
    if (dive(p, whole, root, pool, skip, budget.part(0.3), offer, () => weightOf(p, best))) return result();
  }
  const ended = search(p, whole, root.prices, weightOf(p, best), budget);
  offer(ended.loads);
  if (ended.complete) bound = weightOf(p, best);
  return result();
}

/** The loads cut down to what is needed, empty ones left out. */
function covered(loads: readonly Load[], rest: Rest): Load[] {
  const need = [...rest.need];
  return loads.flatMap(({ bin, counts }) => {
    const kept = counts.map((n, i) => Math.min(n, at(need, i)));
    kept.forEach((n, i) => {
      need[i] = at(need, i) - n;
    });
    return totalOf(kept) > 0 ? [{ bin, counts: kept }] : [];
  });
}

/** Bound by the sizes alone, as a weight. */
function quickBound(p: Problem): number {
  const bought = p.bins.filter((b) => b.weight > 0);
  const owned = p.bins.filter((b) => b.weight === 0);
  const sizes = p.items.flatMap((item) => new Array<number>(item.count).fill(item.size));
  const single = bought.length === 1 && owned.length === 0 ? bought[0] : undefined;
  if (single) return countBound(sizes, single.room) * single.weight;
  const kept = owned.reduce((sum, b) => sum + b.room * b.limit, 0);
  const need = sizes.reduce((a, b) => a + b, 0) - kept;
  return leastCover(
    bought.map((b) => ({ amount: b.room, weight: b.weight })),
    need,
  );
}

/** Powers of size tried as the worth of a piece, and how strongly the worth follows the waste of its board. */
const POWERS = [1, 1.02, 1.05, 1.1, 1.2, 1.01, 1.4];
const CORRECTIONS = 6;

/** Fills boards by size, then again with the worth of pieces corrected by what their boards wasted. */
function fillings(p: Problem, rest: Rest, budget: Budget, offer: (loads: Load[] | null) => boolean): boolean {
  let first = true;
  for (const power of POWERS) {
    let worth = p.items.map((i) => i.size ** power);
    for (let round = 0; round < CORRECTIONS && !budget.done(); round++) {
      // Growing rows takes longer: the first plan must come even where the budget is small.
      const share = first && p.shapes >= MANY_SHAPES ? 0.5 : 0.1;
      const loads = fillBoards(p, rest, worth, budget.part(share));
      first = false;
      if (offer(loads)) return true;
      if (loads === null) break;
      worth = corrected(p, loads, worth);
    }
  }
  return false;
}

/** Sequential value correction: pieces of wasteful boards gain worth, so that they are placed sooner. */
function corrected(p: Problem, loads: readonly Load[], worth: readonly number[]): number[] {
  const next = [...worth];
  for (const { bin, counts } of loads) {
    const { room, weight } = pick(p.bins, bin);
    if (weight === 0) continue;
    const used = p.items.reduce((sum, item, i) => sum + item.size * at(counts, i), 0);
    const waste = room / Math.max(used, room * 0.05);
    p.items.forEach((item, i) => {
      const n = at(counts, i);
      if (n === 0) return;
      const share = n / (2 * item.count);
      next[i] = (1 - share) * at(next, i) + share * item.size ** 1.03 * waste;
    });
  }
  return next;
}

/**
 * Rounds the relaxation: whole parts are taken, then one pattern after another, solving the relaxation of
 * the rest again each time. `skip` makes the dives differ: the first choice passes over so many patterns.
 */
function dive(
  p: Problem,
  whole: Rest,
  root: Relaxed,
  pool: Load[],
  skip: number,
  budget: Budget,
  offer: (loads: readonly Load[] | null) => boolean,
  best: () => number,
): boolean {
  let rest = whole;
  let relaxed = root;
  const taken: Load[] = [];
  for (let depth = 0; !budget.done(); depth++) {
    const chosen = rounded(relaxed, rest, depth === 0 ? skip : 0);
    if (chosen.length === 0) return false;
    taken.push(...chosen);
    rest = afterLoads(rest, chosen);
    const left = totalOf(rest.need);
    const weight = weightOf(p, taken);
    if (left === 0) return offer(taken);
    if (offer([...taken, ...bestFit(p, rest, budget)])) return true;
    const worth = p.items.map((i) => i.size);
    const filled = fillBoards(p, rest, worth, budget.part(0.1));
    if (filled !== null && offer([...taken, ...filled])) return true;
    relaxed = relax(p, rest.need, rest.free, pool, budget.part(0.2));
    if (p.roundUp(weight + relaxed.bound) >= best()) return false;
    if (left <= SMALL) {
      const ended = search(p, rest, relaxed.prices, best() - weight, budget);
      return ended.loads !== null && offer([...taken, ...ended.loads]);
    }
  }
  return false;
}

/** Whole parts of the relaxation, or the pattern nearest to one where there are none. */
function rounded(relaxed: Relaxed, rest: Rest, skip: number): Load[] {
  const loads: Load[] = [];
  let left = rest;
  const take = (load: Load, times: number) => {
    for (let k = 0; k < times; k++) {
      if (at(left.free, load.bin) <= 0) return;
      const counts = load.counts.map((n, i) => Math.min(n, at(left.need, i)));
      if (totalOf(counts) === 0) return;
      loads.push({ bin: load.bin, counts });
      left = afterLoads(left, [{ bin: load.bin, counts }]);
    }
  };
  for (const { load, amount } of relaxed.used) take(load, wholeDown(amount) - (skip > 0 ? 1 : 0));
  if (loads.length > 0) return loads;
  const byFraction = [...relaxed.used].sort(
    (a, b) => b.amount - a.amount || totalOf(b.load.counts) - totalOf(a.load.counts),
  );
  const next = byFraction[Math.min(skip, byFraction.length - 1)];
  if (next) take(next.load, 1);
  return loads;
}
