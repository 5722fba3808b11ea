import { at, pick } from '../list/at.ts';
import type { Liters, Money } from '../measure/units.ts';
import type { ContainerBuy } from './result.ts';

/** A size that can be bought; without a price when nothing is known of it. */
export interface ContainerOffer {
  readonly container: string;
  readonly volume: Liters;
  readonly price: Money | null;
}

/** Volumes closer than this are the same: a drop. */
const DROP: Liters = 1e-6;
/** Beyond this much, the part over it is bought in the best container for its price, and only the rest is searched. */
const SEARCHED: Liters = 500;

/**
 * The cheapest containers that hold at least `need`; among equally cheap ones the least left over, then the
 * fewest. If any size has no price: the least left over, then the fewest. Exact, by looking at every total
 * that the sizes can make.
 *
 * @returns largest first; volume and price are of one container. Empty when nothing is needed or offered.
 */
export function chooseContainers(need: Liters, offers: readonly ContainerOffer[]): ContainerBuy[] {
  const sizes = offers
    .filter((offer) => offer.volume > DROP)
    .sort(
      (a, b) =>
        b.volume - a.volume || (a.price ?? 0) - (b.price ?? 0) || (a.container < b.container ? -1 : 1),
    );
  if (need <= DROP || sizes.length === 0) return [];
  const priced = sizes.every((size) => size.price !== null);
  const counts = new Array<number>(sizes.length).fill(0);
  const bulk = bulkOf(need, sizes, priced);
  if (bulk) counts[bulk.index] = bulk.count;
  const rest = need - (bulk ? bulk.count * pick(sizes, bulk.index).volume : 0);
  for (const index of search(rest, sizes, priced)) counts[index] = at(counts, index) + 1;
  return sizes.flatMap(({ container, volume, price }, i) => {
    const count = at(counts, i);
    return count > 0 ? [{ container, count, volume, price: price ?? 0 }] : [];
  });
}

function bulkOf(need: Liters, sizes: readonly ContainerOffer[], priced: boolean) {
  if (need <= SEARCHED) return null;
  const perLiter = (size: ContainerOffer) => (priced ? (size.price ?? 0) / size.volume : -size.volume);
  let index = 0;
  sizes.forEach((size, i) => {
    if (perLiter(size) < perLiter(pick(sizes, index))) index = i;
  });
  return { index, count: Math.floor((need - SEARCHED) / pick(sizes, index).volume) };
}

/** Indexes of the sizes to buy, one for each container: the best way to each total, then the best total. */
function search(need: Liters, sizes: readonly ContainerOffer[], priced: boolean): number[] {
  const unit = unitOf(sizes.map((size) => size.volume));
  // Sizes are never rounded up, nor the need down by more than a drop: what is chosen is enough.
  const volumes = sizes.map((size) => Math.max(1, Math.floor(size.volume / unit + DROP)));
  const target = Math.max(1, Math.ceil((need - DROP) / unit));
  const most = target + Math.max(...volumes);
  const cost = new Float64Array(most).fill(Number.POSITIVE_INFINITY);
  const cans = new Int32Array(most);
  const last = new Int32Array(most).fill(-1);
  cost[0] = 0;
  for (let total = 1; total < most; total++) {
    volumes.forEach((volume, i) => {
      const before = total - volume;
      const reached = before >= 0 ? at(cost, before) : Number.POSITIVE_INFINITY;
      if (reached === Number.POSITIVE_INFINITY) return;
      const price = reached + (priced ? (pick(sizes, i).price ?? 0) : 0);
      const count = at(cans, before) + 1;
      const now = at(cost, total);
      if (price < now - CENT || (price < now + CENT && count < at(cans, total))) {
        cost[total] = price;
        cans[total] = count;
        last[total] = i;
      }
    });
  }
  let best = -1;
  // Rising totals: a later one must be cheaper to win, so that equal prices leave the least.
  for (let total = target; total < most; total++) {
    const here = at(cost, total);
    if (here < (best < 0 ? Number.POSITIVE_INFINITY : at(cost, best) - CENT)) best = total;
  }
  const chosen: number[] = [];
  for (let total = best; total > 0; total -= pick(volumes, at(last, total))) chosen.push(at(last, total));
  return chosen;
}

/** Sums of prices that differ by less are the same. */
const CENT: Money = 1e-6;

/** A volume that all the sizes are whole multiples of (a half pint, a quarter liter), or else a milliliter. */
function unitOf(volumes: readonly Liters[]): Liters {
  const least = Math.min(...volumes);
  for (let parts = 1; parts <= 24; parts++) {
    const unit = least / parts;
    if (volumes.every((volume) => Math.abs(volume / unit - Math.round(volume / unit)) <= DROP)) return unit;
  }
  return 0.001;
}
