import { describe, expect, it } from 'vitest';
import { planCutting } from '../../src/cutting/cutting.ts';
import type { Cutting } from '../../src/cutting/result.ts';
import { DEFAULT_BED, newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { chanceOf } from '../chance.ts';
import { SUPPLIES } from './starters.ts';

const EFFORT = { nodes: 7000 };

/** Strips with unlike ends: of more than a few, the least is not proved soon. */
function strips(count: number): Design {
  const chance = chanceOf(3);
  const parts = Array.from({ length: count }, (_, i): Part => {
    const box = { x: 10 + 1400 * (i % 2), y: 10 + 60 * Math.floor(i / 2), w: 500 + 800 * chance(), h: 35 };
    const strip = newPart('strip', { id: `s${i}`, name: '', box, stock: 'lath-quarter', finish: 'trim' });
    const end = () => ({ cut: 'miter', angle: Math.round(80 * chance() - 40) }) as const;
    return { ...strip, ends: { start: end(), end: end() } };
  });
  const mattress = { width: 3000, length: 900, thickness: 127 };
  return { ...newDesign({ ...DEFAULT_BED, mattress, ceiling: 6000 }), parts };
}

/** Panels of unlike sizes, beside and above each other. */
function panels(count: number): Design {
  const chance = chanceOf(4);
  const parts = Array.from({ length: count }, (_, i): Part => {
    const at = { x: 10 + 700 * (i % 8), y: 10 + 450 * Math.floor(i / 8) };
    const box = { ...at, w: 120 + 560 * chance(), h: 100 + 340 * chance() };
    return newPart('panel', { id: `p${i}`, name: '', box, stock: 'mdf-quarter', finish: 'trim' });
  });
  const mattress = { width: 6000, length: 3000, thickness: 127 };
  return { ...newDesign({ ...DEFAULT_BED, mattress, ceiling: 8000 }), parts };
}

const cost = ({ cutting }: Plan): number =>
  [...cutting.boardsBound, ...cutting.sheetsBound].reduce((sum, b) => sum + b.cost, 0);

/** Numbers to a thousandth of what a saw tells. */
const toMicrons = (cutting: Cutting): string =>
  JSON.stringify(cutting, (_, value) =>
    typeof value === 'number' ? Math.round(value * 1e6) / 1e6 + 0 : value,
  );

describe('a draft', () => {
  it('comes before its plan, differs from it in what is cut and bought alone, and is never cheaper', () => {
    const planner = createPlanner();
    const design = strips(26);
    const drafts: Plan[] = [];
    const onDraft = (draft: Plan) => void drafts.push(draft);
    const found = planner(design, SUPPLIES, { effort: EFFORT, onDraft });
    expect(drafts).toHaveLength(1);
    const [draft] = drafts as [Plan];
    const { cutting, shopping, total, checks, ...rest } = found;
    expect(draft).toMatchObject(rest);
    const pieces = (p: Plan) => p.cutting.boards.flatMap((b) => b.cuts.map((c) => c.piece)).sort();
    expect(pieces(draft)).toEqual(pieces(found));
    expect(cost(draft)).toBeGreaterThanOrEqual(cost(found));
    // That it is not the least is no news of a draft.
    expect(draft.checks.map((c) => c.code)).not.toContain('cutting.not-proved');
    // The boards are those that are found without a draft.
    const { owned, shop } = design;
    const { joinery, stocks } = found;
    const told = planCutting({ pieces: joinery.pieces, stocks, owned, shop, effort: EFFORT });
    expect(toMicrons(cutting)).toEqual(toMicrons(told));

    // What is cut is as it was: the plan comes at once.
    const again = { ...design, name: 'Another name' };
    planner(again, SUPPLIES, { effort: EFFORT, onDraft });
    expect(drafts).toHaveLength(1);
  });

  it('of many panels is one pass over the sheets, which takes no step of the search', () => {
    const drafts: Plan[] = [];
    let steps = 0;
    const found = createPlanner()(panels(32), SUPPLIES, {
      effort: EFFORT,
      onDraft: (draft) => void drafts.push(draft),
      // A search tells how many of its steps are done, thousands of them; stages are a dozen.
      onStage: (_, done, of) => {
        if (drafts.length === 0 && of > 100 && done < of) steps += 1;
      },
    });
    const [draft] = drafts;
    if (!draft) throw new Error('a draft expected');
    expect(steps).toBe(0);
    const cut = (p: Plan) => p.cutting.sheets.flatMap((s) => s.placements.map((q) => q.piece)).sort();
    expect(cut(draft)).toHaveLength(32);
    expect(cut(draft)).toEqual(cut(found));
    expect(cost(draft)).toBeGreaterThanOrEqual(cost(found));
  });

  it('is not made where a few pieces are proved at once', () => {
    const drafts: Plan[] = [];
    createPlanner()(strips(3), SUPPLIES, { effort: EFFORT, onDraft: (draft) => void drafts.push(draft) });
    expect(drafts).toEqual([]);
  });
});
