import { describe, expect, it } from 'vitest';
import type { PatternSet } from '../../src/patterns/result.ts';
import { cutWithJob } from '../../src/plan/cuttingStage.ts';
import { type Beside, plan, type Work } from '../../src/plan/plan.ts';
import { createPlanMemory } from '../../src/plan/stages/memory.ts';
import { plansOf } from '../../src/plan/stages/patterns.ts';
import type { Plan } from '../../src/plan/types.ts';
import { SUPPLIES, starter } from './starters.ts';

const QUICK = { effort: { nodes: 2000 } };

/** Somebody at the other end of messages: what is told and brought is copied as they are. */
function apart(does: (work: Work) => void): { readonly beside: Beside; readonly sets: Set<PatternSet> } {
  const sets = new Set<PatternSet>();
  return {
    sets,
    beside: {
      joined: (_, work) => {
        const told = structuredClone(work);
        does(told);
        return {
          cutting: () =>
            structuredClone(
              cutWithJob(told.cutting, { ...QUICK.effort, watch: {}, results: createPlanMemory().results }),
            ),
          patterns: () => {
            const brought = structuredClone(plansOf(told.patterns, () => undefined));
            for (const set of brought.flatMap((one) => one.sets)) sets.add(set);
            return brought;
          },
        };
      },
      painted: () => undefined,
      planned: () => undefined,
    },
  };
}

/** Signs, what is sawn along templates, the whole face; sticks and templates for holes are known later. */
const LATER = /^(story-sticks|drilling)/;

describe('work that somebody else does while the plan goes on', () => {
  it.each(['lighthouse-keeper', 'orchard-barn-door'])('%s is the plan that it is without', (name) => {
    const design = starter(name);
    const also = ['face', 'parts', 'story-sticks', 'drilling'] as const;
    const asked = { ...design, pages: { ...design.pages, also: [...also] } };
    const { beside, sets } = apart(() => undefined);
    const together: Plan = plan(asked, SUPPLIES, { ...QUICK, beside });
    expect(together).toEqual(plan(asked, SUPPLIES, QUICK));
    const early = together.patterns.filter((set) => sets.has(set));
    expect(early).toEqual(together.patterns.filter((set) => !LATER.test(set.for)));
    expect(early.length).toBeGreaterThan(1);
    expect(early.length).toBeLessThan(together.patterns.length);
  });

  it('has nothing to print where the paper is none of the table', () => {
    const design = starter('harbor-ticket-kiosk');
    const requests: number[] = [];
    const { beside } = apart(({ patterns }) => requests.push(patterns.requests.length));
    const { checks, patterns } = plan({ ...design, pages: { ...design.pages, paper: 'bark' } }, SUPPLIES, {
      ...QUICK,
      beside,
    });
    expect(requests).toEqual([0]);
    expect(patterns).toEqual([]);
    expect(checks.map(({ code }) => code)).toContain('patterns.unknown-paper');
  });
});
