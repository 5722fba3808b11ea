import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Budget } from '../budget.ts';
import { type Bin, type Counts, fits, nothing, type Problem } from './problem.ts';

/** The best load found for one stretch. */
export interface Filled {
  readonly counts: Counts;
  readonly value: number;
  /** No load is worth more than this; equal to `value` when the search ended and no fit was left open. */
  readonly most: number;
}

/** Gains smaller than this are rounding. */
const GAIN = 1e-11;

/** Items that are worth something, in falling order of value for size, with the smallest size from each on. */
export interface Ranked {
  readonly items: Int32Array;
  readonly sizes: Float64Array;
  readonly values: Float64Array;
  readonly rates: Float64Array;
  readonly least: Float64Array;
}

/** Ranks the items of which some are at hand: made once for many fills at the same worth. */
export function byRate(p: Problem, available: Counts, value: readonly number[]): Ranked {
  const rate = p.items.map((item, i) => at(value, i) / item.size);
  const order = p.items
    .flatMap((_, i) => (at(value, i) > 0 && at(available, i) > 0 ? [i] : []))
    .sort((a, b) => at(rate, b) - at(rate, a) || pick(p.items, b).size - pick(p.items, a).size || a - b);
  const least = new Float64Array(order.length + 1).fill(Infinity);
  for (let k = order.length - 1; k >= 0; k--) {
    least[k] = Math.min(at(least, k + 1), pick(p.items, at(order, k)).size);
  }
  return {
    items: Int32Array.from(order),
    sizes: Float64Array.from(order, (i) => pick(p.items, i).size),
    values: Float64Array.from(order, (i) => at(value, i)),
    rates: Float64Array.from(order, (i) => at(rate, i)),
    least,
  };
}

/**
 * Fills one stretch with the most valuable of the items at hand: depth-first branch and bound in falling
 * order of value for size, cut off by the bound of the linear relaxation. `must` is an item that has to be
 * in, -1 for none.
 */
export function fill(
  p: Problem,
  bin: Bin,
  available: Counts,
  ranked: Ranked,
  budget: Budget,
  must = -1,
): Filled {
  const { items, sizes, values, rates, least } = ranked;
  const counts = nothing(p);
  const plain = p.joints.constant !== null;
  let best = counts;
  let bestValue = 0;
  let worth = 0;
  let room = bin.room;
  let stopped = false;
  /** Worth of the loads that may fit and were passed over, at most. */
  let passed = 0;
  const first = must < 0 ? -1 : items.indexOf(must);
  if (must >= 0) {
    if (first < 0 || at(available, must) === 0 || at(sizes, first) > bin.room + SAME_LENGTH) {
      return { counts, value: 0, most: 0 };
    }
    counts[must] = 1;
    room -= at(sizes, first);
    worth = at(values, first);
    bestValue = worth;
  }
  best = [...counts];
  /** How many of the item at a place of the order are at hand for this stretch. */
  const most = (k: number): number =>
    at(sizes, k) > bin.room + SAME_LENGTH ? 0 : at(available, at(items, k)) - (k === first ? 1 : 0);
  const offered = (k: number): boolean =>
    at(available, at(items, k)) > 0 && at(sizes, k) <= bin.room + SAME_LENGTH;
  const next = (from: number): number => {
    let k = from;
    while (k < items.length && !offered(k)) k += 1;
    return k;
  };
  /** Worth of a length of what is still to come at most; nothing after the last. */
  const rateFrom = (from: number): number => {
    const k = next(from);
    return k < items.length ? at(rates, k) : 0;
  };
  const start = { room, worth };

  const search = (from: number): void => {
    if (worth > bestValue + GAIN) {
      bestValue = worth;
      best = [...counts];
    }
    for (let k = next(from); k < items.length; k = next(k + 1)) {
      if (room + SAME_LENGTH < at(least, k)) return;
      if (worth + (room + SAME_LENGTH) * at(rates, k) <= bestValue + GAIN) return;
      const size = at(sizes, k);
      const i = at(items, k);
      const times = Math.min(most(k), Math.floor((room + SAME_LENGTH) / size));
      for (let x = times; x >= 1; x--) {
        if (stopped || !budget.spend()) {
          stopped = true;
          return;
        }
        counts[i] = at(counts, i) + x;
        const fit = plain ? 'yes' : fits(p, counts, bin.capacity, budget);
        const after = rateFrom(k + 1) * Math.max(0, room - x * size + SAME_LENGTH);
        if (fit === 'open') passed = Math.max(passed, worth + x * at(values, k) + after);
        if (fit === 'yes') {
          room -= x * size;
          worth += x * at(values, k);
          search(k + 1);
          worth -= x * at(values, k);
          room += x * size;
        }
        counts[i] = at(counts, i) - x;
        if (stopped) return;
        // With one fewer, even the best of what follows must beat the best so far.
        const rest = room - (x - 1) * size;
        const bound = worth + (x - 1) * at(values, k) + (rest + SAME_LENGTH) * rateFrom(k + 1);
        if (bound <= bestValue + GAIN) break;
      }
    }
  };
  search(0);
  return {
    counts: best,
    value: bestValue,
    most: Math.max(bestValue, stopped ? relaxed(ranked, most, start) : passed),
  };
}

/** Value of the linear relaxation, items already in order of rate. */
function relaxed(
  { sizes, values }: Ranked,
  most: (k: number) => number,
  start: { readonly room: number; readonly worth: number },
): number {
  let left = start.room + SAME_LENGTH;
  let sum = start.worth;
  for (let k = 0; k < sizes.length && left > 0; k++) {
    const share = Math.min(most(k), left / at(sizes, k));
    sum += share * at(values, k);
    left -= share * at(sizes, k);
  }
  return sum;
}
