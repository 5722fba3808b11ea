import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../at.ts';
import type { Budget } from '../budget.ts';
import { type Bin, type Counts, fits, nothing, type Problem } from './problem.ts';

/** The best load found for one stretch. */
export interface Filled {
  readonly counts: Counts;
  readonly value: number;
  /** No load is worth more than this; equal to `value` when the search ended. */
  readonly most: number;
}

/** Gains smaller than this are rounding. */
const GAIN = 1e-11;

/**
 * Fills one stretch with the most valuable of the items at hand: depth-first branch and bound in falling
 * order of value for size, cut off by the bound of the linear relaxation. `must` is an item that has to be
 * in, -1 for none.
 */
export function fill(
  p: Problem,
  bin: Bin,
  available: Counts,
  value: readonly number[],
  budget: Budget,
  must = -1,
): Filled {
  const order = p.items
    .map((_, i) => i)
    .filter(
      (i) => at(available, i) > 0 && at(value, i) > 0 && pick(p.items, i).size <= bin.room + SAME_LENGTH,
    )
    .sort((a, b) => rate(b) - rate(a) || pick(p.items, b).size - pick(p.items, a).size || a - b);
  function rate(i: number): number {
    return at(value, i) / pick(p.items, i).size;
  }
  const sizes = order.map((i) => pick(p.items, i).size);
  const values = order.map((i) => at(value, i));
  const rates = order.map(rate);
  const most = order.map((i) => at(available, i));
  const counts = nothing(p);
  let best = nothing(p);
  let bestValue = 0;
  let worth = 0;
  let room = bin.room;
  let stopped = false;
  if (must >= 0) {
    const k = order.indexOf(must);
    if (k < 0) return { counts, value: 0, most: 0 };
    counts[must] = 1;
    most[k] = at(most, k) - 1;
    room -= at(sizes, k);
    worth = at(values, k);
    best = [...counts];
    bestValue = worth;
  }
  const plain = p.joints.constant !== null;
  /** Smallest size from each place on: below it nothing more goes in. */
  const least = new Array<number>(order.length + 1).fill(Infinity);
  for (let k = order.length - 1; k >= 0; k--) least[k] = Math.min(at(least, k + 1), at(sizes, k));

  const search = (from: number): void => {
    if (worth > bestValue + GAIN) {
      bestValue = worth;
      best = [...counts];
    }
    for (let k = from; k < order.length; k++) {
      if (room + SAME_LENGTH < at(least, k)) return;
      if (worth + (room + SAME_LENGTH) * at(rates, k) <= bestValue + GAIN) return;
      const size = at(sizes, k);
      const i = at(order, k);
      const times = Math.min(at(most, k), Math.floor((room + SAME_LENGTH) / size));
      for (let x = times; x >= 1; x--) {
        if (stopped || !budget.spend()) {
          stopped = true;
          return;
        }
        counts[i] = at(counts, i) + x;
        if (plain || fits(p, counts, bin.capacity)) {
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
        const bound = worth + (x - 1) * at(values, k) + (rest + SAME_LENGTH) * (rates[k + 1] ?? 0);
        if (bound <= bestValue + GAIN) break;
      }
    }
  };
  search(0);
  return {
    counts: best,
    value: bestValue,
    most: stopped ? relaxed(sizes, values, most, room, worth) : bestValue,
  };
}

/** Value of the linear relaxation, items already in order of rate. */
function relaxed(
  sizes: readonly number[],
  values: readonly number[],
  most: readonly number[],
  room: number,
  worth: number,
): number {
  let left = room + SAME_LENGTH;
  let sum = worth;
  for (let k = 0; k < sizes.length && left > 0; k++) {
    const share = Math.min(at(most, k), left / at(sizes, k));
    sum += share * at(values, k);
    left -= share * at(sizes, k);
  }
  return sum;
}
