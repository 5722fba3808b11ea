import { describe, expect, it } from 'vitest';
import type { PlanFacts, PlanGiven } from '../../src/plan/stages/facts.ts';
import { createPlanMemory } from '../../src/plan/stages/memory.ts';
import { type Stages, stage, through } from '../../src/plan/stages/stage.ts';
import { PLAN_STAGES } from '../../src/plan/stages/table.ts';
import { SUPPLIES, starter } from './starters.ts';

describe('a graph of stages', () => {
  interface Given {
    readonly a: number;
    readonly b: number;
  }
  interface Found {
    readonly sum: number;
    readonly twice: number;
  }
  const told: string[] = [];
  const graph: Stages<Given & Found, Found> = {
    sum: stage(
      ({ a, b }) => ({ a, b }),
      ({ a, b }) => {
        told.push('sum');
        return a + b;
      },
    ),
    twice: stage(
      ({ sum }) => ({ sum }),
      ({ sum }, last) => {
        told.push(`twice after ${last}`);
        return 2 * sum;
      },
    ),
  };

  it('makes again only what follows from another input, from what it came to last', () => {
    const first = through<Given, Found>(graph, { a: 1, b: 2 }, {});
    expect(first.facts).toEqual({ a: 1, b: 2, sum: 3, twice: 6 });
    const same = through<Given, Found>(graph, { a: 1, b: 2 }, first.made);
    expect(same.facts).toEqual(first.facts);
    expect(told.splice(0)).toEqual(['sum', 'twice after undefined']);
    // Another way to the same sum: what follows from the sum stays.
    through<Given, Found>(graph, { a: 2, b: 1 }, first.made);
    expect(told.splice(0)).toEqual(['sum']);
    through<Given, Found>(graph, { a: 2, b: 2 }, first.made);
    expect(told.splice(0)).toEqual(['sum', 'twice after 6']);
  });

  it('has each stage of the plan follow from what stands before it alone', () => {
    const given: PlanGiven = {
      ...{ design: starter('harbor-ticket-kiosk'), tables: SUPPLIES.tables, supplies: SUPPLIES, nodes: 2000 },
      ...{ watch: {}, elsewhere: null, memory: createPlanMemory(), held: new Set() },
    };
    const known: Record<string, unknown> = { ...given };
    const order = Object.values(PLAN_STAGES).flatMap((stages) => Object.entries(stages));
    for (const [name, one] of order) {
      const asked = new Set<string>();
      const watched = new Proxy(known, {
        get: (facts, fact: string) => {
          asked.add(fact);
          return facts[fact];
        },
      });
      known[name] = one(watched as unknown as PlanGiven & PlanFacts, undefined).result;
      for (const fact of asked) expect(known[fact], `${name} from ${fact}`).toBeDefined();
    }
    expect(Object.keys(known).length).toBe(Object.keys(given).length + order.length);
  });
});
