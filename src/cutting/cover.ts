import { DUST } from '../geometry/tolerance.ts';
import { at, pick } from '../list/at.ts';

/** Something that can be bought any number of times. */
export interface Kind {
  readonly amount: number;
  readonly weight: number;
}

const MOST_STEPS = 20_000;

/**
 * Least weight of whole boards or sheets that together give `need` of length or area: a lower bound on any
 * plan, sharper than price per amount because nothing is bought in parts. Falls back to price per amount
 * where there are too many combinations.
 */
export function leastCover(kinds: readonly Kind[], need: number): number {
  if (need <= 0 || kinds.length === 0) return 0;
  const sorted = [...kinds].sort((a, b) => a.weight / a.amount - b.weight / b.amount || b.amount - a.amount);
  const rates = sorted.map((k) => k.weight / k.amount);
  // A hair less is needed: amounts are sums of rounded numbers.
  const whole = need * (1 - DUST);
  let best = Math.min(...sorted.map((k) => Math.ceil(whole / k.amount) * k.weight));
  let steps = 0;
  const go = (i: number, left: number, weight: number): void => {
    steps += 1;
    if (left <= 0) {
      best = Math.min(best, weight);
      return;
    }
    if (i === sorted.length || steps > MOST_STEPS || weight + left * at(rates, i) >= best) return;
    const kind = pick(sorted, i);
    for (let n = Math.ceil(left / kind.amount); n >= 0; n--) {
      go(i + 1, left - n * kind.amount, weight + n * kind.weight);
    }
  };
  go(0, whole, 0);
  return steps > MOST_STEPS ? whole * at(rates, 0) : best;
}
