import { at, pick } from '../at.ts';
import { type Budget, budgetOf } from '../budget.ts';
import { shuffler } from '../random.ts';
import { sheetBound } from './bound.ts';
import { exactPlan } from './exact.ts';
import { CUTS, FITS, type Manner, placeAll } from './greedy.ts';
import { leaves, type SheetLoad, type SheetPlan, type SheetProblem } from './problem.ts';

export interface SolvedSheets {
  readonly plan: SheetPlan | null;
  readonly bound: number;
}

const heavier = (a: SheetPlan, b: SheetPlan | null): boolean =>
  b === null || a.weight < b.weight || (a.weight === b.weight && a.rest > b.rest + 1e-6);

/** Keys by which pieces are put in falling order. */
const KEYS: readonly ((p: SheetProblem, i: number) => number)[] = [
  (p, i) => pick(p.items, i).area,
  (p, i) => Math.max(...pick(p.items, i).ways.map((t) => Math.max(t.w, t.h))),
  (p, i) => Math.max(...pick(p.items, i).ways.map((t) => t.h)),
  (p, i) => Math.max(...pick(p.items, i).ways.map((t) => t.w)),
  (p, i) => Math.min(...pick(p.items, i).ways.map((t) => Math.min(t.w, t.h))),
  (p, i) => Math.min(...pick(p.items, i).ways.map((t) => t.w + t.h)),
];

const SEED = 20;

/**
 * Sheets for the pieces: many quick plans in different manners, an exact one where the pieces are few,
 * then quick plans from shuffled orders for as long as the budget lasts and the bound is not met.
 */
export function solveSheets(p: SheetProblem, budget: Budget): SolvedSheets {
  const limits = p.bins.map((b) => b.limit);
  let bound = sheetBound(p);
  let best: SheetPlan | null = null;
  const offer = (plan: SheetPlan | null) => {
    if (plan !== null && heavier(plan, best)) best = plan;
  };
  const exact = exactPlan(p, limits, budget.part(0.5));
  if (exact !== null) return { plan: exact, bound: exact.weight };
  const manners = mannersOf(p);
  for (const manner of manners) offer(placeAll(p, manner, limits, budget.part(0.2)));
  const random = shuffler(SEED);
  const more = budget.part(0.8);
  for (let round = 0; !more.done() && manners.length > 0; round++) {
    const base = pick(manners, round % manners.length);
    offer(placeAll(p, { ...base, order: nudged(base.order, random) }, limits, more));
    if (round % 64 === 63 && best !== null) offer(repacked(p, best, limits, budget.part(0.1)));
  }
  // A cancelled plan is still a plan.
  if (best === null && manners[0]) offer(placeAll(p, manners[0], limits, budgetOf(Infinity)));
  const final: SheetPlan | null = best;
  if (final !== null) bound = Math.min(bound, (final as SheetPlan).weight);
  return { plan: final, bound };
}

function mannersOf(p: SheetProblem): Manner[] {
  const copies = p.items.flatMap((item, i) => new Array<number>(item.count).fill(i));
  const bought = p.bins.map((_, b) => b).filter((b) => pick(p.bins, b).weight > 0);
  return KEYS.flatMap((key) => {
    const order = [...copies].sort((a, b) => key(p, b) - key(p, a) || a - b);
    return (Object.keys(FITS) as Manner['fit'][]).flatMap((fit) =>
      (Object.keys(CUTS) as Manner['cut'][]).flatMap((cut) =>
        (bought.length > 0 ? bought : [-1]).map((open) => ({ order, fit, cut, open })),
      ),
    );
  });
}

/** The order with a few pieces moved forward. */
function nudged(order: readonly number[], random: () => number): number[] {
  const next = [...order];
  const moves = 1 + Math.floor(random() * Math.max(1, order.length / 4));
  for (let k = 0; k < moves; k++) {
    const from = Math.floor(random() * next.length);
    const to = Math.floor(random() * (from + 1));
    next.splice(to, 0, ...next.splice(from, 1));
  }
  return next;
}

/** Takes one or two sheets apart and plans their pieces exactly. */
function repacked(
  p: SheetProblem,
  plan: SheetPlan,
  limits: readonly number[],
  budget: Budget,
): SheetPlan | null {
  const { loads } = plan;
  let best: SheetPlan | null = null;
  for (let a = 0; a < loads.length; a++) {
    for (let b = a; b < loads.length; b++) {
      const out = a === b ? [pick(loads, a)] : [pick(loads, a), pick(loads, b)];
      const kept = loads.filter((l) => !out.includes(l));
      const again = planFor(p, out, kept, limits, budget);
      if (again === null) continue;
      const all = [...kept, ...again.loads];
      const next: SheetPlan = {
        loads: all,
        weight: all.reduce((sum, l) => sum + pick(p.bins, l.bin).weight, 0),
        rest: Math.max(
          again.rest,
          ...kept.flatMap((l) => leaves(l.root).map((q) => (q.item < 0 ? q.w * q.h : 0))),
        ),
      };
      if (heavier(next, best)) best = next;
    }
  }
  return best;
}

function planFor(
  p: SheetProblem,
  out: readonly SheetLoad[],
  kept: readonly SheetLoad[],
  limits: readonly number[],
  budget: Budget,
): SheetPlan | null {
  const counts = p.items.map(() => 0);
  for (const l of out)
    for (const q of leaves(l.root)) if (q.item >= 0) counts[q.item] = at(counts, q.item) + 1;
  const present = counts.flatMap((n, i) => (n > 0 ? [i] : []));
  const free = limits.map((n, b) => n - kept.filter((l) => l.bin === b).length);
  const small: SheetProblem = {
    ...p,
    items: present.map((i) => ({ ...pick(p.items, i), count: at(counts, i) })),
  };
  const found = exactPlan(small, free, budget.part(0.3));
  if (found === null) return null;
  const named = (b: SheetLoad['root']): SheetLoad['root'] => ({
    ...b,
    item: b.item < 0 ? -1 : at(present, b.item),
    cut: b.cut === null ? null : { ...b.cut, low: named(b.cut.low), high: named(b.cut.high) },
  });
  return { ...found, loads: found.loads.map((l) => ({ bin: l.bin, root: named(l.root) })) };
}
