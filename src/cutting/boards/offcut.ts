import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import { relax } from './columns.ts';
import { afterLoads, restOf } from './greedy.ts';
import { byRate, fill } from './knapsack.ts';
import {
  type Counts,
  fits,
  type Load,
  minus,
  nothing,
  type Problem,
  plus,
  taken,
  totalOf,
  weightOf,
} from './problem.ts';
import { eachFullLoad, search } from './search.ts';

const restIn = (p: Problem, load: Load): Mm => pick(p.bins, load.bin).capacity - taken(p, load.counts);

/** Boards whose rest is tried as the one to grow. */
const TRIED = 6;
/** Plans of more pieces are improved pair by pair only. */
const SEARCHED = 40;
/** A rest must grow by this much to count. */
const STEP: Mm = 0.01;

/**
 * The same boards with the wood left over gathered in one of them: pieces move between pairs of boards
 * for as long as the longest rest grows; small plans are then searched for a longer one still. Owned
 * stretches that lie idle take part as receivers.
 */
export function gatherRest(p: Problem, loads: readonly Load[], budget: Budget): Load[] {
  const idle = idleOwned(p, loads);
  let best = [...loads, ...idle];
  const start = best;
  const order = start
    .map((_, i) => i)
    .sort((a, b) => restIn(p, pick(start, b)) - restIn(p, pick(start, a)) || a - b)
    .filter((i) => totalOf(pick(start, i).counts) > 0)
    .slice(0, TRIED);
  for (const grow of order) {
    const grown = growRest(p, start, grow, budget.part(0.1));
    if (longest(p, grown) > longest(p, best) + STEP) best = grown;
  }
  const used = best.filter((l) => totalOf(l.counts) > 0);
  return totalOf(p.items.map((i) => i.count)) <= SEARCHED ? searchRest(p, used, budget) : used;
}

/** Idle owned stretches that take part: so many alike, and so many in all, the longest first. */
const ALIKE = 3;
const MOST_IDLE = 60;

function idleOwned(p: Problem, loads: readonly Load[]): Load[] {
  const used = p.bins.map(() => 0);
  for (const load of loads) used[load.bin] = at(used, load.bin) + 1;
  return p.bins
    .flatMap((bin, b) =>
      bin.weight > 0 ? [] : new Array<number>(Math.max(0, Math.min(ALIKE, bin.limit - at(used, b)))).fill(b),
    )
    .sort((a, b) => pick(p.bins, b).capacity - pick(p.bins, a).capacity || a - b)
    .slice(0, MOST_IDLE)
    .map((bin) => ({ bin, counts: nothing(p) }));
}

/** Longest rest; an owned stretch that nothing is cut from is wood kept whole and counts too. */
const longest = (p: Problem, loads: readonly Load[]): Mm => Math.max(0, ...loads.map((l) => restIn(p, l)));

function growRest(p: Problem, start: readonly Load[], grow: number, budget: Budget): Load[] {
  const loads = [...start];
  const ranked = byRate(
    p,
    p.items.map((i) => i.count),
    p.items.map((i) => i.size),
  );
  for (let moved = true; moved && !budget.done(); ) {
    moved = false;
    for (let j = 0; j < loads.length && !budget.done(); j++) {
      if (j === grow) continue;
      const a = pick(loads, grow);
      const b = pick(loads, j);
      const both = plus(a.counts, b.counts);
      const packed = fill(p, pick(p.bins, b.bin), both, ranked, budget.part(0.05)).counts;
      const rest = minus(both, packed);
      // What was bought must be cut from; else it would not have been bought.
      const empty = totalOf(rest) === 0 || totalOf(packed) === 0;
      if (empty && pick(p.bins, a.bin).weight > 0) continue;
      if (fits(p, rest, pick(p.bins, a.bin).capacity, budget) !== 'yes') continue;
      if (taken(p, rest) > taken(p, a.counts) - STEP) continue;
      loads[grow] = { bin: a.bin, counts: rest };
      loads[j] = { bin: b.bin, counts: packed };
      moved = true;
    }
  }
  return loads;
}

/** Looks for a plan no heavier in which one board keeps more than the longest rest so far. */
function searchRest(p: Problem, start: readonly Load[], budget: Budget): Load[] {
  let best = [...start];
  const weight = weightOf(p, start);
  if (start.length < 2) return best;
  const whole = restOf(p);
  const { prices } = relax(p, whole.need, whole.free, [...start], budget.part(0.3));
  const attempt = (): boolean => {
    const target = longest(p, [...best, ...idleOwned(p, best)]) + STEP;
    for (const [b, bin] of p.bins.entries()) {
      if (bin.capacity - target <= SAME_LENGTH) continue;
      let found: Load[] | null = null;
      for (let first = 0; first < p.items.length && found === null; first++) {
        const from = p.items.map((item, i): number => (i < first ? 0 : item.count));
        const room = bin.room - target;
        eachFullLoad(p, bin.capacity - target, room, from, first, budget, (counts: Counts) => {
          const load = { bin: b, counts };
          const rest = afterLoads(whole, [load]);
          const others = search(p, rest, prices, weight - bin.weight + 1, budget.part(0.2)).loads;
          if (others !== null) found = [load, ...others];
          return others === null && !budget.done();
        });
      }
      if (found !== null) {
        best = found;
        return true;
      }
      if (budget.done()) return false;
    }
    return false;
  };
  while (!budget.done() && attempt());
  return best;
}
