import { DUST } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Budget } from '../budget.ts';
import { packSheet } from './blocks.ts';
import { type Filled, fillSheet, MANNERS, planOf } from './fill.ts';
import { areaOf, type SheetLoad, type SheetPlan, type SheetProblem } from './problem.ts';
import { hasPlenty, searchSheet } from './search.ts';

/** Keys by which pieces are put in falling order. */
const KEYS: readonly ((p: SheetProblem, i: number) => number)[] = [
  (p, i) => pick(p.items, i).area,
  (p, i) => Math.max(...pick(p.items, i).ways.map((t) => Math.max(t.w, t.h))),
  (p, i) => Math.max(...pick(p.items, i).ways.map((t) => t.h)),
  (p, i) => Math.max(...pick(p.items, i).ways.map((t) => t.w)),
  (p, i) => Math.min(...pick(p.items, i).ways.map((t) => Math.min(t.w, t.h))),
  (p, i) => Math.min(...pick(p.items, i).ways.map((t) => t.w + t.h)),
];

/** Of so few pieces, or where there is plenty of all, the exact search finds the fullest sheet by so many joins. */
const FEW_PIECES = 12;
const SEARCH = 3000;

/** A sheet that takes all that is left counts for so many times as much. */
const ALL_LEFT = 1.15;

export interface Effort {
  /** Ways of filling tried for each sheet of each kind. */
  readonly tries: number;
  /** How far chance may move pieces in the order and sheets in the choice; 0 for none. */
  readonly stir: number;
  /** Whether parts are put together for each sheet, which takes as long as many ways of filling. */
  readonly search: boolean;
  /** Power of its area by which a piece is worth more for each unit of it: large ones would stay for the last sheets. */
  readonly lean: number;
}

/**
 * Sheet after sheet: each kind of sheet is filled in several manners, and the filling with the most area
 * for its price is taken. Owned sheets come first and take the filling that leaves them fullest; a sheet
 * that takes all that is left is preferred. Null when the budget ends or a piece fits no sheet that is
 * left.
 */
export function assemble(
  p: SheetProblem,
  counts: readonly number[],
  limits: readonly number[],
  effort: Effort,
  random: () => number,
  budget: Budget,
): SheetPlan | null {
  const need = [...counts];
  const free = [...limits];
  const loads: SheetLoad[] = [];
  while (need.some((n) => n > 0)) {
    const best = nextSheet(p, need, free, effort, random, budget);
    if (best === null) return null;
    loads.push({ bin: best.bin, root: best.filled.root });
    free[best.bin] = at(free, best.bin) - 1;
    best.filled.counts.forEach((n, i) => {
      need[i] = at(need, i) - n;
    });
  }
  return planOf(p, loads);
}

interface Chosen {
  readonly bin: number;
  readonly filled: Filled;
}

function nextSheet(
  p: SheetProblem,
  need: readonly number[],
  free: readonly number[],
  effort: Effort,
  random: () => number,
  budget: Budget,
): Chosen | null {
  const left = areaOf(p, need);
  let best: Chosen | null = null;
  let top = -1;
  const stirred = (rate: number, whole: boolean, chance: number) =>
    rate * (whole ? ALL_LEFT : 1) * (1 + effort.stir * 0.25 * chance);
  const bins = p.bins
    .map((bin, b) => {
      const area = bin.w * bin.h;
      // Owned sheets cost nothing: they come before any that is bought, the best filled of them first.
      const rate = bin.weight === 0 ? 1e6 / area : 1 / bin.weight;
      return { b, rate, most: stirred(rate * area, left <= area * (1 + DUST), 1) };
    })
    .sort((x, y) => y.most - x.most);
  for (const { b, rate, most } of bins) {
    if (at(free, b) <= 0 || most <= top) continue;
    const filled = fullest(p, b, need, left, effort, random, budget);
    if (filled === null || filled.area === 0) continue;
    const rated = stirred(rate * filled.area, filled.area >= left * (1 - DUST), random());
    if (rated > top) {
      top = rated;
      best = { bin: b, filled };
    }
  }
  return best;
}

/** The filling of one sheet with the most area, over several orders and manners. */
export function fullest(
  p: SheetProblem,
  bin: number,
  need: readonly number[],
  left: number,
  effort: Effort,
  random: () => number,
  budget: Budget,
): Filled | null {
  let best: Filled | null = null;
  const start = effort.stir > 0 ? Math.floor(random() * KEYS.length * MANNERS.length) : 0;
  for (let k = 0; k < effort.tries; k++) {
    const turn = start + k * 7;
    const key = pick(KEYS, turn % KEYS.length);
    const manner = pick(MANNERS, turn % MANNERS.length);
    const filled = fillSheet(p, bin, ordered(p, need, key, effort.stir, random), manner, budget);
    if (filled === null) return best;
    if (best === null || filled.area > best.area) best = filled;
    if (best.area >= left * (1 - DUST)) return best;
  }
  if (!effort.search) return best;
  const worth = (i: number) =>
    pick(p.items, i).area ** effort.lean * (1 + effort.stir * 0.3 * (random() - 0.5));
  const few = need.reduce((a, b) => a + b, 0) <= FEW_PIECES || hasPlenty(p, bin, need);
  const searched = few ? searchSheet(p, bin, need, worth, SEARCH, budget) : null;
  if (searched !== null && searched.area > (best?.area ?? 0)) best = searched;
  const found = packSheet(p, bin, need, worth, budget);
  return found && found.area > (best?.area ?? 0) ? found : best;
}

/** Every copy still needed, in falling order of a key that chance may bend. */
function ordered(
  p: SheetProblem,
  need: readonly number[],
  key: (p: SheetProblem, i: number) => number,
  stir: number,
  random: () => number,
): number[] {
  const keyed = need.flatMap((n, i) =>
    n > 0 ? [{ i, n, k: key(p, i) * (1 + stir * (random() - 0.5)) }] : [],
  );
  return keyed.sort((a, b) => b.k - a.k || a.i - b.i).flatMap(({ i, n }) => new Array<number>(n).fill(i));
}
