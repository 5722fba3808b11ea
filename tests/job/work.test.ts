import { describe, expect, it } from 'vitest';
import { benchSteps } from '../../src/cutting/atSaw.ts';
import { liveFacts, saying } from '../../src/design/job/record.ts';
import type { Job } from '../../src/design/job/schema.ts';
import { cutSaying, doneSteps } from '../../src/job/acts.ts';
import { kindOf, stepSaying, workOf } from '../../src/job/work.ts';
import type { Step } from '../../src/marks/result.ts';
import { chanceOf } from '../chance.ts';
import { planOf, STARTERS } from '../plan/starters.ts';

const shares = (a: readonly string[], b: readonly string[]) => a.some((part) => b.includes(part));

describe('the work of a starter', () => {
  it.each(STARTERS)('%s: each step that is said to come next can be done, until all is done', (name) => {
    const plan = planOf(name);
    const { steps } = plan.marks;
    const sawing = benchSteps(plan.cutting, plan.joinery.pieces);
    const boxes = new Map(plan.layout.parts.map(({ id, box }) => [id, box]));
    const chance = chanceOf(name.length);
    let job: Job | undefined;
    const now = () => {
      const facts = liveFacts(job);
      return workOf({ steps, sawing, sawn: doneSteps(sawing, { facts, stocks: plan.stocks }), facts });
    };
    const last: Step[] = [];
    let meanwhiles = 0;
    for (let n = 0; n < steps.length + 2; n++) {
      const work = now();
      if (!work.next) break;
      const before = steps.filter(({ number }) => number < (work.next?.number ?? 0));
      // Nothing that it rests on is left open: no step before it with one of its parts.
      for (const step of before) {
        if (!work.done.has(step))
          expect(shares(step.parts, work.next.parts), `${name} ${step.act}`).toBe(false);
      }
      for (const one of work.meanwhile) {
        meanwhiles++;
        // What can be done meanwhile touches nothing that is wet, and has all that comes before it with its parts.
        expect(shares(one.parts, work.wet)).toBe(false);
        for (const step of steps) {
          const open = step.number < one.number && !work.done.has(step) && step !== work.next;
          if (open)
            expect(shares(step.parts, one.parts), `${name}: ${one.act} before ${step.act}`).toBe(false);
        }
      }
      // Now and then something is done meanwhile.
      const some = work.meanwhile[0];
      const step = some && chance() < 0.5 ? some : work.next;
      last.push(step);
      if (kindOf(step) === 'saw') {
        expect(work.atSaw !== null || step !== work.next).toBe(true);
        const at = {
          cutting: plan.cutting,
          stocks: plan.stocks,
          shop: plan.design.shop,
          planned: [],
          facts: liveFacts(job),
        };
        const own = sawing.filter(
          ({ kind }) => (step.act === 'cut-sheets') === (kind === 'sheet-cut' || kind === 'sheet-piece'),
        );
        for (const one of own) job = saying(job, cutSaying(one, { ...at, facts: liveFacts(job) }));
      } else job = saying(job, stepSaying(step, boxes));
      expect(now().done.has(step), `${name} ${step.act}`).toBe(true);
    }
    const end = now();
    expect(end.next).toBeNull();
    for (const { done, all } of [end.cut, end.fastened, end.painted]) expect(done).toBe(all);
    // The swing is tried last of all.
    expect(last.at(-1)?.act).toBe('try-swing');
    expect(new Set(last).size).toBe(steps.length);
    expect(meanwhiles).toBeGreaterThan(0);
  });
});
