import { at, pick } from '../../list/at.ts';
import { type Budget, budgetOf } from '../budget.ts';
import { shuffler, someOf } from '../random.ts';
import { assemble } from './assemble.ts';
import { sheetBound } from './bound.ts';
import { exactPlan } from './exact.ts';
import { planOf } from './fill.ts';
import { countsOn, leaves, type SheetLoad, type SheetPlan, type SheetProblem } from './problem.ts';
import { ontoSet, setsBelow } from './tighten.ts';

export interface SolvedSheets {
  readonly plan: SheetPlan | null;
  readonly bound: number;
}

const SEED = 20;
/** Share of the budget that may go into trying everything. */
const FOR_ALL = 0.5;
const FOR_STARTS = 0.5;
const FOR_RESTS = 0.3;
/** Sets of sheets lighter than the plan that are tried, and the share of what is left that goes there. */
const MOST_SETS = 4;
const FOR_SETS = 0.7;
/** The plan that comes first. */
const FIRST = { tries: 6, stir: 0, search: false, lean: 0 };
/** Whole plans made before sheets are taken apart and planned again. */
const STARTS = 24;

/** Powers of area by which large pieces gain worth in one plan after the other, found on 24 sets of 40 to 160 panels. */
const LEANS = [0, 0.03, 0.06, 0.1];

/** How often parts are put together while improving. */
const SEARCHED = 0.3;

/** Rests whose areas differ by less than this share of a sheet are alike; labor decides between them. */
const REST_STEP = 0.01;

/** The order of the goals: money and count, the largest rest, labor. */
function goalsOf(p: SheetProblem): (a: SheetPlan, b: SheetPlan | null) => boolean {
  const step = REST_STEP * Math.max(...p.bins.map((b) => b.w * b.h));
  const steps = (plan: SheetPlan) => Math.floor(plan.rest / step);
  return (a, b) => {
    if (b === null || a.weight !== b.weight) return b === null || a.weight < b.weight;
    return steps(a) !== steps(b) ? steps(a) > steps(b) : a.labor < b.labor;
  };
}

/**
 * Sheets for the pieces. Few pieces: every pattern is tried. Else many plans are made sheet by sheet; lighter sets
 * of sheets than the best of them takes are then tried for all pieces together; and what is left of the budget goes
 * into taking two or three sheets apart and planning their pieces again.
 *
 * @param soon only the first plan, sheet by sheet
 */
export function solveSheets(p: SheetProblem, budget: Budget, soon = false): SolvedSheets {
  const limits = p.bins.map((b) => b.limit);
  const counts = p.items.map((i) => i.count);
  if (soon) {
    const plan = assemble(p, counts, limits, FIRST, shuffler(SEED), budgetOf(Infinity));
    return { plan, bound: Math.min(sheetBound(p), plan?.weight ?? 0) };
  }
  const exact = exactPlan(p, limits, budget.part(FOR_ALL));
  if (exact !== null) return { plan: exact, bound: exact.weight };
  const random = shuffler(SEED);
  const better = goalsOf(p);
  const bound = sheetBound(p);
  let best: SheetPlan | null = null;
  const starts = budget.part(FOR_STARTS);
  for (let k = 0; k < STARTS && !starts.done(); k++) {
    const effort = {
      tries: 12 + 4 * (k % 3),
      stir: k === 0 ? 0 : 0.15 + 0.1 * (k % 4),
      search: k % 2 === 0 && (best === null || best.weight > bound),
      lean: at(LEANS, Math.floor(k / 2) % LEANS.length),
    };
    const plan = assemble(p, counts, limits, effort, random, starts);
    if (plan !== null && better(plan, best)) best = plan;
  }
  // A plan that was cancelled before it began is still a plan.
  best ??= assemble(p, counts, limits, FIRST, random, budgetOf(Infinity));
  if (best === null) return { plan: null, bound: 0 };
  const sets = setsBelow(p, best.weight, bound).slice(0, MOST_SETS);
  const tight = budget.part(FOR_SETS);
  for (const [k, set] of sets.entries()) {
    const lighter = ontoSet(p, set, best, random, tight.part(1 / (sets.length - k)));
    if (lighter !== null && better(lighter, best)) best = lighter;
  }
  // A plan that is proved has only its largest rest to gain.
  const proved = best.weight <= bound;
  const search = proved ? 0 : SEARCHED;
  const plan = improved(p, best, limits, search, random, proved ? budget.part(FOR_RESTS) : budget);
  return { plan, bound: Math.min(bound, plan.weight) };
}

/** Grows when pieces gather on some sheets and others come free. */
const gathered = (p: SheetProblem, loads: readonly SheetLoad[]): number =>
  loads.reduce((sum, l) => {
    const used = leaves(l.root).reduce((a, b) => (b.item >= 0 ? a + b.w * b.h : a), 0);
    return sum + (used * used) / (pick(p.bins, l.bin).w * pick(p.bins, l.bin).h);
  }, 0);

function improved(
  p: SheetProblem,
  start: SheetPlan,
  limits: readonly number[],
  search: number,
  random: () => number,
  budget: Budget,
): SheetPlan {
  const better = goalsOf(p);
  let now = start;
  let best = start;
  let score = gathered(p, now.loads);
  while (!budget.done()) {
    const out = someOf(now.loads, MOST_APART, random);
    const kept = now.loads.filter((l) => !out.includes(l));
    const again = planned(p, out, kept, limits, search, random, budget);
    if (again === null) continue;
    const next = planOf(p, [...kept, ...again]);
    const nextScore = gathered(p, next.loads);
    if (better(next, best)) best = next;
    if (next.weight < now.weight || (next.weight === now.weight && nextScore >= score)) {
      now = next;
      score = nextScore;
    }
  }
  return best;
}

/** Sheets taken apart at once, at most. */
const MOST_APART = 3;

/** Pieces few enough to try every pattern for while improving. */
const FEW = 7;

function planned(
  p: SheetProblem,
  out: readonly SheetLoad[],
  kept: readonly SheetLoad[],
  limits: readonly number[],
  search: number,
  random: () => number,
  budget: Budget,
): SheetLoad[] | null {
  const counts = countsOn(p, out);
  const free = limits.map((n, b) => n - kept.filter((l) => l.bin === b).length);
  const pieces = counts.reduce((a, b) => a + b, 0);
  if (pieces <= FEW) {
    const exact = exactPart(p, counts, free, budget.part(0.1));
    if (exact !== null) return exact;
  }
  const effort = { tries: 8, stir: 0.1 + 0.5 * random(), search: random() < search, lean: 0 };
  const plan = assemble(p, counts, free, effort, random, budget);
  return plan === null ? null : [...plan.loads];
}

/** The exact plan of some of the pieces. */
function exactPart(
  p: SheetProblem,
  counts: readonly number[],
  free: readonly number[],
  budget: Budget,
): SheetLoad[] | null {
  const present = counts.flatMap((n, i) => (n > 0 ? [i] : []));
  const small: SheetProblem = {
    ...p,
    items: present.map((i) => ({ ...pick(p.items, i), count: at(counts, i) })),
  };
  const found = exactPlan(small, free, budget);
  if (found === null) return null;
  const named = (b: SheetLoad['root']): SheetLoad['root'] => ({
    ...b,
    item: b.item < 0 ? -1 : at(present, b.item),
    cut: b.cut === null ? null : { ...b.cut, low: named(b.cut.low), high: named(b.cut.high) },
  });
  return found.loads.map((l) => ({ bin: l.bin, root: named(l.root) }));
}
