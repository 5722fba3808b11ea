import { at } from '../../list/at.ts';
import { wholeUp } from '../../measure/round.ts';

/**
 * Lower bounds on the number of equal boards, from the sizes alone. All are quick; the bound of the
 * pattern program (`columns.ts`) is stronger and dearer.
 */

/** A hair under 1, so that sums of rounded sizes never claim a board too many. */
const HAIR = 1e-9;

/** Total size over capacity. */
export function lengthBound(sizes: readonly number[], room: number): number {
  return wholeUp(sizes.reduce((a, b) => a + b, 0) / room);
}

/**
 * L2 of S. Martello and P. Toth, Knapsack Problems (1990), chapter 8: for each threshold k, pieces over
 * `room - k` fill a board alone, pieces over half a board take one each, and what is at least k long goes
 * into the room that those leave.
 */
export function thresholdBound(sizes: readonly number[], room: number): number {
  const sorted = [...sizes].sort((a, b) => b - a);
  const n = sorted.length;
  // sums[i]: size of the first i pieces.
  const sums = [0];
  for (const s of sorted) sums.push(at(sums, sums.length - 1) + s);
  const slack = room * HAIR;
  const countOver = (limit: number): number => {
    let low = 0;
    let high = n;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (at(sorted, mid) > limit + slack) low = mid + 1;
      else high = mid;
    }
    return low;
  };
  const half = countOver(room / 2);
  let best = lengthBound(sizes, room);
  for (const k of [0, ...sorted.filter((s) => s <= room / 2)]) {
    const alone = countOver(room - k);
    const large = Math.max(half, alone);
    const from = countOver(k - 3 * slack);
    const small = at(sums, Math.max(from, large)) - at(sums, large);
    const spare = (large - alone) * room - (at(sums, large) - at(sums, alone));
    best = Math.max(best, large + wholeUp((small - spare) / room));
  }
  return best;
}

/**
 * L3 (same source): pieces that dominance proves to share a board are set aside, the rest is bounded by
 * L2, and the bound is kept while the smallest pieces are dropped one at a time. The one reduction used:
 * a piece with which no second piece fits stands alone; the largest piece and the largest partner that
 * fits beside it may be paired when no two pieces fit beside it together.
 */
export function reducedBound(sizes: readonly number[], room: number): number {
  let left = [...sizes].sort((a, b) => b - a);
  let fixed = 0;
  let best = thresholdBound(left, room);
  const slack = room * HAIR;
  while (left.length > 0) {
    const first = at(left, 0);
    const partner = left.findIndex((s, i) => i > 0 && first + s <= room + slack);
    const two = left.length > 2 ? at(left, left.length - 1) + at(left, left.length - 2) : Infinity;
    if (partner < 0) left = left.slice(1);
    else if (first + two > room + slack) left = left.filter((_, i) => i !== 0 && i !== partner);
    else {
      best = Math.max(best, fixed + thresholdBound(left, room));
      left = left.slice(0, -1);
      continue;
    }
    fixed += 1;
    best = Math.max(best, fixed);
  }
  return best;
}

/** How many steps of the staircase function are tried. */
const STAIRS = 12;

/**
 * Dual feasible functions of S. P. Fekete and J. Schepers (Mathematical Programming 91, 2001): sizes are
 * bent so that no board's contents grow over one board, and the bent sizes are added up.
 */
export function bentBound(sizes: readonly number[], room: number): number {
  let best = 0;
  for (let k = 1; k <= STAIRS; k++) {
    let sum = 0;
    for (const s of sizes) sum += stair(s / room, k);
    best = Math.max(best, wholeUp(sum));
  }
  return best;
}

/** u(k): x stays where (k + 1) x is whole, else it falls to the whole part of (k + 1) x over k. */
export function stair(x: number, k: number): number {
  const y = (k + 1) * x;
  const whole = Math.round(y);
  if (Math.abs(y - whole) <= 1e-7) return Math.min(x, whole / (k + 1));
  return Math.floor(y) / k;
}

/** The best of them. */
export const countBound = (sizes: readonly number[], room: number): number =>
  Math.max(reducedBound(sizes, room), bentBound(sizes, room));
