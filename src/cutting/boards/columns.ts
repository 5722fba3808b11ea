import { at, pick, under } from '../../list/at.ts';
import type { Budget } from '../budget.ts';
import { byRate, fill } from './knapsack.ts';
import { type Counts, type Load, type Problem, totalOf } from './problem.ts';
import { type Column, covering } from './simplex.ts';

/** Prices that no load beats: what they add up to over any rest is a lower bound on its weight. */
export interface Prices {
  readonly item: readonly number[];
  /** Worth of one more stretch of each bin; 0 for what is bought. */
  readonly bin: readonly number[];
}

export interface Relaxed {
  readonly prices: Prices;
  readonly bound: number;
  readonly used: readonly { readonly load: Load; readonly amount: number }[];
}

export const boundOf = (prices: Prices, need: Counts, free: readonly number[]): number =>
  need.reduce((sum, n, i) => sum + n * at(prices.item, i), 0) -
  free.reduce((sum, n, b) => sum + (at(prices.bin, b) > 0 ? n * at(prices.bin, b) : 0), 0);

const ROUNDS = 4000;
/** Price of an item left over, against the dearest board: far above what any piece can be worth. */
const MISSING = 50;

/**
 * Linear relaxation of the choice of patterns, by column generation: the simplex prices the items, a
 * knapsack finds the pattern worth more than its board, until there is none. The prices are then scaled
 * so that every board is proved to be worth its contents (J. M. Farley's bound), which keeps the bound
 * true even where the search for patterns was cut short. `pool` keeps patterns from one call to the next.
 */
export function relax(
  p: Problem,
  need: Counts,
  free: readonly number[],
  pool: Load[],
  budget: Budget,
): Relaxed {
  const rows = p.items.map((_, i) => i).filter((i) => at(need, i) > 0);
  const owned = p.bins.map((_, b) => b).filter((b) => Number.isFinite(at(free, b)) && at(free, b) > 0);
  const scale = 1 / Math.max(1, ...p.bins.map((b) => b.weight));
  const lp = covering([...rows.map((i) => at(need, i)), ...owned.map((b) => -at(free, b))], MISSING);
  const rowOf = new Map(rows.map((i, r) => [i, r]));
  const limitRow = new Map(owned.map((b, k) => [b, rows.length + k]));
  const loads: Load[] = [];
  const column = ({ bin, counts }: Load): Column => {
    const touched = counts.flatMap((n, i) => {
      const row = n > 0 ? rowOf.get(i) : undefined;
      return row === undefined ? [] : [{ row, n }];
    });
    const limit = limitRow.get(bin);
    if (limit !== undefined) touched.push({ row: limit, n: -1 });
    return {
      rows: touched.map((t) => t.row),
      values: touched.map((t) => t.n),
      cost: pick(p.bins, bin).weight * scale,
    };
  };
  const add = (load: Load) => {
    lp.add(column(load));
    loads.push(load);
  };
  const usable = p.bins.map((_, b) => b).filter((b) => at(free, b) > 0);
  for (const load of pool) if (at(free, load.bin) > 0) add(load);

  let solved = lp.solve(budget);
  const price = () => {
    const item = p.items.map((_, i) => (rowOf.has(i) ? at(solved.duals, under(rowOf, i)) : 0));
    const ranked = byRate(p, need, item);
    return {
      item,
      filled: usable.map((b) => fill(p, pick(p.bins, b), need, ranked, budget.part(0.05))),
    };
  };
  let priced = price();
  for (let round = 0; round < ROUNDS && !budget.done(); round++) {
    let found = 0;
    usable.forEach((b, k) => {
      const { counts, value } = pick(priced.filled, k);
      const limit = limitRow.get(b);
      const cost = pick(p.bins, b).weight * scale + (limit === undefined ? 0 : at(solved.duals, limit));
      if (value <= cost + 1e-7 || totalOf(counts) === 0) return;
      found += 1;
      add({ bin: b, counts });
      pool.push({ bin: b, counts });
    });
    if (found === 0) break;
    solved = lp.solve(budget);
    priced = price();
  }
  const worst = Math.max(
    1e-12,
    ...usable.map((b, k) =>
      Number.isFinite(at(free, b)) ? 0 : pick(priced.filled, k).most / (pick(p.bins, b).weight * scale),
    ),
  );
  // Nothing can be bought: what is missing has no price and the bound is the trivial one.
  const shrink = worst > 1e-9 ? 1 / (Math.max(1, worst) * scale) : 0;
  const prices: Prices = {
    item: priced.item.map((v) => v * shrink),
    bin: p.bins.map((_, b) => {
      const k = usable.indexOf(b);
      return k < 0 || !Number.isFinite(at(free, b)) ? 0 : pick(priced.filled, k).most * shrink;
    }),
  };
  return {
    prices,
    bound: Math.max(
      0,
      boundOf(
        prices,
        need,
        free.map((n) => (Number.isFinite(n) ? n : 0)),
      ),
    ),
    used: solved.used.map(({ column: c, amount }) => ({ load: pick(loads, c), amount })),
  };
}
