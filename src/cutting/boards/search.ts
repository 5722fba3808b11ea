import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Budget } from '../budget.ts';
import { boundOf, type Prices } from './columns.ts';
import type { Rest } from './greedy.ts';
import { type Counts, fits, type Load, nothing, type Problem } from './problem.ts';

export interface Searched {
  /** A plan lighter than `under`, or null. */
  readonly loads: Load[] | null;
  /** Whether the search ended: then nothing lighter exists. */
  readonly complete: boolean;
}

/** States remembered, to meet each rest only once. */
const MOST_STATES = 200_000;
/** Counts kept in all of them: states of many items are long. */
const MOST_KEPT = 8_000_000;

/**
 * Bin completion: the longest piece left must lie on some board, so every board and every full load with
 * that piece is tried, deepest first. A load that another piece could still join need not be tried (the
 * piece may as well join it), and a rest is given up when its prices show that it cannot come out under
 * the best plan.
 */
export function search(p: Problem, rest: Rest, prices: Prices, under: number, budget: Budget): Searched {
  let limit = under;
  let best: Load[] | null = null;
  let complete = true;
  const openBefore = p.joints.open();
  const chosen: Load[] = [];
  const need = [...rest.need];
  const free = [...rest.free];
  const finite = (): number[] => free.map((n) => (Number.isFinite(n) ? n : 0));
  const seen = new Map<string, number>();
  const mostSeen = Math.min(MOST_STATES, MOST_KEPT / Math.max(1, need.length));

  const open = (weight: number): void => {
    if (weight >= limit) return;
    const longest = need.findIndex((n) => n > 0);
    if (longest < 0) {
      limit = weight;
      best = [...chosen];
      return;
    }
    if (p.roundUp(weight + Math.max(0, boundOf(prices, need, finite()))) >= limit) return;
    const key = `${need.join()}/${finite().join()}`;
    const before = seen.get(key);
    if (before !== undefined && before <= weight) return;
    if (seen.size < mostSeen) seen.set(key, weight);
    for (let b = 0; b < p.bins.length; b++) {
      if (at(free, b) <= 0) continue;
      const bin = pick(p.bins, b);
      if (weight + bin.weight >= limit) continue;
      free[b] = at(free, b) - 1;
      eachFullLoad(p, bin.capacity, bin.room, need, longest, budget, (counts) => {
        counts.forEach((n, i) => {
          need[i] = at(need, i) - n;
        });
        chosen.push({ bin: b, counts });
        open(weight + bin.weight);
        chosen.pop();
        counts.forEach((n, i) => {
          need[i] = at(need, i) + n;
        });
        return !budget.done();
      });
      free[b] = at(free, b) + 1;
      if (budget.done()) {
        complete = false;
        return;
      }
    }
  };
  open(0);
  return { loads: best, complete: complete && !budget.done() && p.joints.open() === openBefore };
}

/** Calls `use` with every load that holds `must` and that no further piece fits into; false from it stops. */
export function eachFullLoad(
  p: Problem,
  capacity: number,
  room: number,
  need: Counts,
  must: number,
  budget: Budget,
  use: (counts: Counts) => boolean,
): void {
  const counts = nothing(p);
  const left = [...need];
  const plain = p.joints.constant !== null;
  const joins = (i: number): boolean => {
    counts[i] = at(counts, i) + 1;
    const ok = fits(p, counts, capacity, budget) === 'yes';
    counts[i] = at(counts, i) - 1;
    return ok;
  };
  const full = (free: number): boolean => {
    for (let i = 0; i < left.length; i++) {
      if (at(left, i) === 0 || pick(p.items, i).size > free + SAME_LENGTH) continue;
      if (plain || !budget.spend() || joins(i)) return false;
    }
    return true;
  };
  const take = (i: number, n: number) => {
    counts[i] = at(counts, i) + n;
    left[i] = at(left, i) - n;
  };
  const step = (i: number, free: number): boolean => {
    if (!budget.spend()) return false;
    let k = i;
    while (k < left.length && (at(left, k) === 0 || pick(p.items, k).size > free + SAME_LENGTH)) k++;
    if (k >= left.length) return full(free) ? use([...counts]) : true;
    const { size } = pick(p.items, k);
    const most = Math.min(at(left, k), Math.floor((free + SAME_LENGTH) / size));
    for (let n = most; n >= 0; n--) {
      take(k, n);
      const fit = n === 0 || plain || fits(p, counts, capacity, budget) === 'yes';
      const go = fit ? step(k + 1, free - n * size) : true;
      take(k, -n);
      if (!go) return false;
    }
    return true;
  };
  const first = pick(p.items, must);
  if (first.length > capacity + SAME_LENGTH || first.size > room + SAME_LENGTH) return;
  take(must, 1);
  step(0, room - first.size);
}
