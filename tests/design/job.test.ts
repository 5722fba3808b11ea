import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign } from '../../src/design/defaults.ts';
import { applyEdits, type Edit } from '../../src/design/edit/edit.ts';
import { liveFacts, mergedJobs, type Saying, saying, takenBack } from '../../src/design/job/record.ts';
import type { Job } from '../../src/design/job/schema.ts';
import { redo, startState, transact, undo } from '../../src/design/state.ts';
import { runs } from '../runs.ts';

/**
 * A record that two devices write is a join semilattice: what a state-based replicated data type has to be (Shapiro,
 * Preguiça, Baquero, Zawirski, "Conflict-free replicated data types", 2011, section 3, from memory): its merge is
 * commutative, associative and idempotent, and each update only goes up.
 */

const done = (part: string, box: readonly [number, number, number, number]): Saying => ({
  ...{ is: 'done', id: `done:fix:${part}`, act: 'fix', part, of: null, finish: null, box },
});

/** What one device does: says that a part is on, at some place, or that it is not. */
const act = fc.record({
  part: fc.constantFrom('a', 'b', 'c', 'd'),
  at: fc.integer({ min: 0, max: 3 }),
  on: fc.boolean(),
});
const history = fc.array(act, { maxLength: 8 });

const wentOn = (job: Job | undefined, acts: readonly { part: string; at: number; on: boolean }[]) =>
  acts.reduce<Job | undefined>((now, { part, at, on }) => {
    if (on) return saying(now, [done(part, [at, 0, 10, 10])]);
    return now && takenBack(now, new Set([`done:fix:${part}`]));
  }, job);

/** The same job is the same text: `plan.json` and links are made of it. */
const text = (job: Job | undefined) =>
  JSON.stringify([...(job?.facts ?? [])].sort((a, b) => (a.id < b.id ? -1 : 1)));

describe('the record of a job', () => {
  it('merges in any order, any grouping and any number of times to the same', () => {
    fc.assert(
      fc.property(history, history, history, history, (begin, one, two, three) => {
        const start = wentOn(undefined, begin);
        const [a, b, c] = [wentOn(start, one), wentOn(start, two), wentOn(start, three)];
        const all = text(mergedJobs(mergedJobs(a, b), c));
        expect(text(mergedJobs(b, a))).toBe(text(mergedJobs(a, b)));
        expect(text(mergedJobs(a, mergedJobs(b, c)))).toBe(all);
        for (const [p, q, r] of [
          [a, c, b],
          [b, a, c],
          [b, c, a],
          [c, a, b],
          [c, b, a],
        ]) {
          expect(text(mergedJobs(mergedJobs(p, q), r))).toBe(all);
        }
        expect(text(mergedJobs(a, a))).toBe(text(a));
        expect(text(mergedJobs(mergedJobs(mergedJobs(a, b), c), b))).toBe(all);
      }),
      { numRuns: runs(300) },
    );
  });

  it('loses nothing that only one device said', () => {
    fc.assert(
      fc.property(history, history, (one, two) => {
        const [a, b] = [
          wentOn(undefined, one),
          wentOn(
            undefined,
            two.map((did) => ({ ...did, part: `${did.part}2` })),
          ),
        ];
        const told = liveFacts(mergedJobs(a, b)).map(({ id }) => id);
        for (const { id } of [...liveFacts(a), ...liveFacts(b)]) expect(told).toContain(id);
        expect(told).toHaveLength(liveFacts(a).length + liveFacts(b).length);
      }),
      { numRuns: runs(200) },
    );
  });

  it('hears of what was undone: the other device does not bring it back, and redo does', () => {
    const design = newDesign();
    const put = (job: Job): Edit => ({ kind: 'set', field: 'job', value: job });
    const first = saying(undefined, [done('a', [0, 0, 1, 1])]);
    const begun = transact(startState(design), { edits: [put(first)], label: 'fastened' });
    if (!begun.ok) throw new Error('refused');
    const other = begun.state.design.job;
    const back = undo(begun.state);
    expect(liveFacts(back.design.job)).toEqual([]);
    expect(liveFacts(mergedJobs(other, back.design.job))).toEqual([]);
    const again = redo(back);
    expect(
      liveFacts(mergedJobs(mergedJobs(other, back.design.job), again.design.job)).map(({ id }) => id),
    ).toEqual(['done:fix:a']);
  });

  it('holds whatever undo, redo, merging and going on come to: each step only goes up', () => {
    fc.assert(
      fc.property(
        history,
        history,
        fc.array(fc.constantFrom('undo', 'redo', 'merge'), { maxLength: 8 }),
        (one, two, steps) => {
          let state = startState(newDesign());
          for (let n = 1; n <= one.length; n++) {
            const job = wentOn(state.design.job, one.slice(n - 1, n));
            if (!job) continue;
            const next = transact(state, { edits: [{ kind: 'set', field: 'job', value: job }], label: 'x' });
            if (next.ok) state = next.state;
          }
          const theirs = wentOn(undefined, two);
          for (const step of steps) {
            const before = state.design.job;
            if (step === 'undo') state = undo(state);
            else if (step === 'redo') state = redo(state);
            else {
              const job = mergedJobs(before, theirs);
              const next = applyEdits(state.design, job ? [{ kind: 'set', field: 'job', value: job }] : []);
              if (next.ok) state = { ...state, design: next.design };
            }
            // What was before is in what is now: putting them together changes nothing.
            expect(text(mergedJobs(before, state.design.job))).toBe(text(state.design.job));
          }
        },
      ),
      { numRuns: runs(200) },
    );
  });
});
