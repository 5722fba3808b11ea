import { DUST } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Budget } from '../budget.ts';
import { bestPattern } from './best.ts';
import type { Filled } from './fill.ts';
import { filledWith, type Made } from './made.ts';
import type { SheetProblem } from './problem.ts';
import type { ValuedType, Way } from './valued.ts';

/** Blocks valued before a search; more take longer than the search itself. */
const CELLS = 4000;

/** Whether there are more of each piece than a sheet holds. */
export function hasPlenty(p: SheetProblem, bin: number, need: readonly number[]): boolean {
  const { w, h } = pick(p.bins, bin);
  return need.every((n, i) => n === 0 || n >= Math.floor((w * h) / pick(p.items, i).area + DUST));
}

/**
 * Fills one sheet as well as can be from the pieces still needed, by the exact search for the most valuable
 * pattern as far as `nodes` joins of two blocks take it. Where there are more of each piece than a sheet
 * holds, the pattern is the best there is.
 *
 * @param worth value of a piece of an item for each unit of its area; 1 for the fullest sheet
 */
export function searchSheet(
  p: SheetProblem,
  bin: number,
  need: readonly number[],
  worth: (item: number) => number,
  nodes: number,
  budget: Budget,
): Filled | null {
  const { w, h } = pick(p.bins, bin);
  const wanted = need.flatMap((n, i) => (n > 0 ? [i] : []));
  const plenty = hasPlenty(p, bin, need);
  const types = wanted.map((i): ValuedType => {
    const item = pick(p.items, i);
    const { w, h } = pick(item.ways, 0);
    return {
      w,
      h,
      value: item.area * worth(i),
      max: plenty ? undefined : at(need, i),
    };
  });
  const ways = wanted.flatMap((i, type) => pick(p.items, i).ways.map((turn): Way => ({ type, ...turn })));
  const share = Math.min(1, nodes / Math.max(1, budget.left));
  const { made } = bestPattern({ w, h }, types, ways, { cells: CELLS, budget: budget.part(share) });
  if (made === null) return null;
  return filledWith(p, bin, itemsOf(made, wanted));
}

const itemsOf = (made: Made, items: readonly number[]): Made =>
  'item' in made
    ? { ...made, item: at(items, made.item) }
    : { ...made, low: itemsOf(made.low, items), high: itemsOf(made.high, items) };
