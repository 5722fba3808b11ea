import type { Check } from '../check/check.ts';
import { at } from '../list/at.ts';
import type { Mm, Money } from '../measure/units.ts';
import type { BoardsBound } from './result.ts';

/**
 * What a board or sheet weighs in the choice: whole numbers in which money comes first and the count of
 * boards breaks ties, so that one sum carries the two first goals of cutting.
 */
export interface Weighed {
  /** Price reckoned for each size, in the order given. */
  readonly cost: readonly Money[];
  /** `cost` in whole steps times `COUNT_STEP`, plus one for the board itself. */
  readonly weight: readonly number[];
  /** Money of one step; 0 where nothing is priced. */
  readonly step: Money;
  /** Least weight that a set of whole boards can have and that is not under `bound`. */
  roundUp(bound: number): number;
}

/** One step of cost outweighs this many boards. */
export const COUNT_STEP = 4096;
const CENTS = 100;
/** Sums of prices are tabled up to this many steps. */
const TABLE_LIMIT = 400_000;

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/**
 * Reckons sizes. Nothing priced: wood is compared by its amount (length or area) and costs nothing. Some
 * priced and some not: an unpriced size counts at the dearest rate among the priced ones, so that it is
 * never bought merely because its price is unknown.
 */
export function weigh(sizes: readonly { readonly amount: Mm; readonly price: Money }[]): Weighed {
  const rate = Math.max(0, ...sizes.map((s) => (s.price > 0 ? s.price / s.amount : 0)));
  const priced = rate > 0;
  const cost = sizes.map((s) => (s.price > 0 ? s.price : Math.ceil(s.amount * rate * CENTS) / CENTS));
  const whole = sizes.map((s, i) =>
    Math.max(1, priced ? Math.round(at(cost, i) * CENTS) : Math.round(s.amount)),
  );
  const unit = whole.reduce(gcd, 0) || 1;
  const steps = whole.map((w) => w / unit);
  return {
    cost: priced ? cost : cost.map(() => 0),
    weight: steps.map((s) => s * COUNT_STEP + 1),
    step: priced ? unit / CENTS : 0,
    roundUp: sumsOf(steps),
  };
}

/**
 * How near a plan is to the least.
 *
 * @param lengths boards or sheets, owned ones among them
 * @param fewest the least number to buy where they come in several sizes
 */
export function boundOf(
  weighed: Weighed,
  stock: string,
  lengths: readonly { readonly owned: string | null; readonly cost: Money }[],
  { weight, bound }: { readonly weight: number; readonly bound: number },
  fewest: () => number,
): BoardsBound {
  const bought = lengths.filter(({ owned }) => owned === null);
  const steps = Math.floor(bound / COUNT_STEP);
  const [only, ...others] = weighed.weight;
  const least = only !== undefined && others.length === 0 ? Math.round(bound / only) : fewest();
  return {
    stock,
    used: bought.length,
    lowerBound: Math.min(bought.length, least),
    cost: bought.reduce((sum, { cost }) => sum + cost, 0),
    lowerCost: steps * weighed.step,
    proved: steps >= Math.floor(weight / COUNT_STEP),
  };
}

/** Says that a plan may not be the least, and by how much at most. */
export const notProved = ({ stock, used, lowerBound, cost, lowerCost }: BoardsBound): Check => ({
  code: 'cutting.not-proved',
  severity: 'note',
  parts: [],
  figures: { stock, used, lower_bound: lowerBound, cost, lower_cost: lowerCost },
});

/** Rounds up to what some set of whole boards can weigh; sums are tabled as far as they are asked for. */
function sumsOf(steps: readonly number[]): (bound: number) => number {
  const least: number[] = [0];
  const most: number[] = [0];
  const extend = (cost: number) => {
    for (let c = least.length; c <= cost; c++) {
      let low = Infinity;
      let high = -Infinity;
      for (const s of steps) {
        if (s > c) continue;
        low = Math.min(low, at(least, c - s) + 1);
        high = Math.max(high, at(most, c - s) + 1);
      }
      least.push(low);
      most.push(high);
    }
  };
  return (bound) => {
    // A hair of slack: the bound is a floating-point sum and must not be rounded past a whole number.
    const need = Math.max(0, Math.ceil(bound * (1 - 1e-9) - 1e-4));
    for (let c = Math.floor(need / COUNT_STEP); c < TABLE_LIMIT; c++) {
      if (steps.length === 0) return need;
      extend(c);
      const low = at(least, c);
      if (low === Infinity || c * COUNT_STEP + at(most, c) < need) continue;
      return Math.max(need, c * COUNT_STEP + low);
    }
    return need;
  };
}
