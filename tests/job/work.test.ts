import { describe, expect, it } from 'vitest';
import { benchSteps } from '../../src/cutting/atSaw.ts';
import { liveFacts, saying } from '../../src/design/job/record.ts';
import type { Job } from '../../src/design/job/schema.ts';
import { cutSaying, doneSteps } from '../../src/job/acts.ts';
import { kindOf, stepSaying, workOf } from '../../src/job/work.ts';
import type { Step } from '../../src/marks/result.ts';
import { chanceOf, pick } from '../chance.ts';
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

  it.each(STARTERS)('%s: done in any order, what comes next is open and waits for nothing', (name) => {
    const plan = planOf(name);
    const { steps } = plan.marks;
    const sawing = benchSteps(plan.cutting, plan.joinery.pieces);
    const boxes = new Map(plan.layout.parts.map(({ id, box }) => [id, box]));
    const chance = chanceOf(name.length + 77);
    let job: Job | undefined;
    const left = new Set(steps);
    const cut = (step: Step) =>
      sawing.filter(
        ({ kind }) => (step.act === 'cut-sheets') === (kind === 'sheet-cut' || kind === 'sheet-piece'),
      );
    while (left.size > 0) {
      // Not as it is told: whatever a person takes up first.
      const step = pick([...left], chance);
      const at = { cutting: plan.cutting, stocks: plan.stocks, shop: plan.design.shop, planned: [] };
      if (kindOf(step) === 'saw')
        for (const one of cut(step)) job = saying(job, cutSaying(one, { ...at, facts: liveFacts(job) }));
      else job = saying(job, stepSaying(step, boxes));
      left.delete(step);
      const facts = liveFacts(job);
      const work = workOf({ steps, sawing, sawn: doneSteps(sawing, { facts, stocks: plan.stocks }), facts });
      // By the twin's own list of what was done.
      expect(new Set(steps.filter((one) => !work.done.has(one)))).toEqual(left);
      expect(work.next === null).toBe(left.size === 0);
      for (const one of [...(work.next ? [work.next] : []), ...work.meanwhile]) {
        expect(left.has(one)).toBe(true);
        for (const before of left)
          if (before.number < one.number)
            expect(shares(before.parts, one.parts), `${name}: ${one.act} before ${before.act}`).toBe(false);
      }
      // With its setting wherever it is sawn, and hints for drying paint only where there is such paint.
      if (work.next && kindOf(work.next) === 'saw') expect(work.atSaw).not.toBeNull();
      if (work.meanwhile.length > 0) expect(work.wet.length).toBeGreaterThan(0);
    }
  });
});
