import { describe, expect, it } from 'vitest';
import { type BenchStep, benchSteps } from '../../src/cutting/atSaw.ts';
import type { SheetPlacement } from '../../src/cutting/result.ts';
import { liveFacts, type Saying, saying } from '../../src/design/job/record.ts';
import type { Design } from '../../src/design/schema.ts';
import { boughtSaying, cutSaying, doneSteps, spoiledSaying } from '../../src/job/acts.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { chanceOf, pick } from '../chance.ts';
import { STARTERS, SUPPLIES, starter } from './starters.ts';

const planner = createPlanner();

const atSaw = (plan: Plan, design: Design) => ({
  ...{ cutting: plan.cutting, stocks: plan.stocks, shop: design.shop },
  ...{ planned: liveFacts(plan.design.job), facts: liveFacts(design.job) },
});
const with_ = (design: Design, said: readonly Saying[]): Design => ({
  ...design,
  job: saying(design.job, said),
});
const steps = (plan: Plan) => benchSteps(plan.cutting, plan.joinery.pieces);
const todo = (plan: Plan, design: Design): BenchStep[] => {
  const done = doneSteps(steps(plan), atSaw(plan, design));
  return steps(plan).filter(({ id }) => !done.has(id));
};

/** Where each piece lies, whatever number its board has. */
const lies = ({ cutting }: Plan): string[] =>
  [
    ...cutting.boards.flatMap(({ cuts, length }) =>
      cuts.map((c) => `${c.piece} ${length} ${c.from.toFixed(3)}`),
    ),
    ...cutting.sheets.flatMap(({ placements, length }) =>
      placements.map((p) => `${p.piece} ${length} ${p.x.toFixed(3)} ${p.y.toFixed(3)}`),
    ),
  ].sort();

const apart = (a: SheetPlacement, b: SheetPlacement) =>
  a.x + a.w <= b.x + 1e-6 || b.x + b.w <= a.x + 1e-6 || a.y + a.h <= b.y + 1e-6 || b.y + b.h <= a.y + 1e-6;

/** Every piece once, sheets without two pieces on each other, whatever the plan says of itself. */
function isWhole(plan: Plan): void {
  const placed = [
    ...plan.cutting.boards.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)),
    ...plan.cutting.sheets.flatMap(({ placements }) => placements.map(({ piece }) => piece)),
  ];
  expect(placed.sort()).toEqual(plan.joinery.pieces.map(({ id }) => id).sort());
  for (const { placements, length, width } of plan.cutting.sheets) {
    placements.forEach((a, i) => {
      expect(a.x + a.w).toBeLessThanOrEqual(length + 1e-6);
      expect(a.y + a.h).toBeLessThanOrEqual(width + 1e-6);
      for (const b of placements.slice(i + 1)) {
        if (!a.from || !b.from) expect(apart(a, b)).toBe(true);
      }
    });
  }
}

describe('a starter, built', () => {
  it.each(STARTERS.slice(0, 3))('%s: cut half, spoil one of each form, plan the rest, and cut it', (name) => {
    const chance = chanceOf(name.length);
    let design = starter(name);
    const first = planner(design, SUPPLIES);
    let plan = first;
    const many = steps(plan).length;
    while (todo(plan, design).length > many / 2) {
      design = with_(design, cutSaying(pick(todo(plan, design), chance), atSaw(plan, design)));
    }
    plan = planner(design, SUPPLIES);
    // Cut as planned, in whatever order: the plan is the same, and what is begun is bought no more.
    expect(lies(plan)).toEqual(lies(first));
    expect(plan.total).toBeLessThan(first.total);
    const done = doneSteps(steps(plan), atSaw(plan, design));
    for (const kind of ['board-piece', 'sheet-piece'] as const) {
      const step = todo(plan, design).find((one) => one.kind === kind);
      if (!step || step.kind === 'sheet-cut') continue;
      const said = spoiledSaying(step, step.piece.length / 3, atSaw(plan, design));
      if ('problem' in said) throw new Error(said.problem);
      design = with_(design, said);
      plan = planner(design, SUPPLIES);
      isWhole(plan);
      // The piece is to be cut once more, elsewhere.
      expect(doneSteps(steps(plan), atSaw(plan, design)).has(step.piece.id)).toBe(false);
    }
    const cutBefore = lies(first).filter((at) => done.has(at.split(' ')[0] ?? ''));
    expect(lies(plan)).toEqual(expect.arrayContaining(cutBefore));
    for (let step = todo(plan, design)[0]; step; step = todo(plan, design)[0]) {
      design = with_(design, cutSaying(step, atSaw(plan, design)));
    }
    const last = planner(design, SUPPLIES);
    isWhole(last);
    expect(lies(last)).toEqual(lies(plan));
    expect(
      last.shopping.filter(({ kind, owned }) => (kind === 'board' || kind === 'sheet') && !owned),
    ).toEqual([]);
    // Another part of the plan does not know what is cut.
    expect(last.finish.jobs).toEqual(first.finish.jobs);
  });

  it('counts what is bought as there, whatever is planned with it', () => {
    const design = starter('bread-shop');
    const first = planner(design, SUPPLIES);
    const wood = first.shopping.filter(({ kind }) => kind === 'board' || kind === 'sheet');
    const said = wood.flatMap(({ item, size: { length_mm: length = 0, width_mm: width } }) =>
      boughtSaying({ stock: item, length, width }, atSaw(first, design)),
    );
    expect(said).toHaveLength(wood.reduce((sum, { count }) => sum + count, 0));
    const bought = with_(design, said);
    const plan = planner(bought, SUPPLIES);
    expect(lies(plan)).toEqual(lies(first));
    const paid = wood.reduce((sum, { price }) => sum + price, 0);
    expect(plan.total).toBeCloseTo(first.total - paid, 6);
    // Another design, with one part less: nothing more is to be bought, and what is bought is not paid for twice.
    const parts = bought.parts.filter(
      ({ kind }, i) => kind !== 'strip' || i !== bought.parts.findIndex((p) => p.kind === 'strip'),
    );
    const less = planner({ ...bought, parts, rules: [] }, SUPPLIES);
    isWhole(less);
    const again = less.shopping.filter(({ kind, owned }) => (kind === 'board' || kind === 'sheet') && !owned);
    expect(again).toEqual([]);
  });
});
