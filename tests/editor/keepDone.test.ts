import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/design/edit/edit.ts';
import { liveFacts, type Saying, saying } from '../../src/design/job/record.ts';
import type { Design } from '../../src/design/schema.ts';
import { carriedOut, type Document, freshDocument, tried } from '../../src/editor/document/document.ts';
import { createTouching } from '../../src/editor/document/touching.ts';
import { keepingDone, undoneBy } from '../../src/editor/edit/keepDone.ts';
import { commit } from '../../src/editor/state/commit.ts';
import { createEditorStore } from '../../src/editor/state/store.ts';
import { loadTouching } from '../../src/editor/state/touching.ts';
import { stepSaying } from '../../src/job/work.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { STARTERS, starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';

const touching = createTouching();

/** What the twin asks: is a part that is on still at the place where it was nailed, to a hundredth of a millimeter. */
const near = (a: number, b: number) => Math.abs(a - b) < 0.01;

const fastenedSaying = (doc: Document, ids: readonly string[]): readonly Saying[] =>
  stepSaying(
    { number: 1, act: 'fix', parts: ids, paints: [] },
    new Map(doc.shown.layout.parts.map(({ id, box }) => [id, box])),
  );

/** Something that a person may change with parts on: a part is moved, a bed gets wider, a measure of a rule is another. */
function change({ design, shown }: Document, chance: Chance): readonly Edit[] {
  const by = (pick([-1, 1], chance) * (5 + chance() * 60)) | 0;
  if (chance() < 0.3) {
    const bed = {
      ...design.bed,
      mattress: { ...design.bed.mattress, width: design.bed.mattress.width + by },
    };
    return [{ kind: 'set', field: 'bed', value: bed }];
  }
  const rules = design.rules.filter((rule) => rule.kind === 'set');
  const rule = rules.length > 0 && chance() < 0.5 ? pick(rules, chance) : undefined;
  if (rule?.kind === 'set') {
    return [{ kind: 'replace', list: 'rules', id: rule.id, item: { ...rule, distance: rule.distance + by } }];
  }
  const part = pick(design.parts, chance);
  const box = shown.layout.boxes.get(part.id) ?? part.box;
  return [
    {
      kind: 'replace',
      list: 'parts',
      id: part.id,
      item: { ...part, box: { ...box, x: box.x + by } } as Design['parts'][number],
    },
  ];
}

describe('a change with parts already on', () => {
  let kept = 0;
  let all = 0;

  it.each(STARTERS.slice(0, 4))(
    '%s: what is kept lies where it was fastened, and rules that are left hold',
    (name) => {
      const chance = chanceOf(name.length * 7);
      let asked = 0;
      // Not every change touches what is on: so many are tried until some have.
      for (let n = 0; n < 60 && asked < runs(3); n++) {
        const bare = freshDocument(starter(name));
        const ids = bare.shown.layout.parts.filter(({ kind }) => kind !== 'painted').map(({ id }) => id);
        const on = ids.filter(() => chance() < 0.3);
        const job = saying(undefined, fastenedSaying(bare, on));
        const doc = freshDocument({ ...bare.design, job });
        const edits = change(doc, chance);
        const after = tried(doc, edits);
        const touched = touching.of(doc.shown, after);
        const boxes = new Map(doc.shown.layout.parts.map(({ id, box }) => [id, box]));
        // Told of is just what a person sees move, go or change its size.
        const moved = on.filter((id) => {
          const [was, is] = [boxes.get(id), after.layout.parts.find((laid) => laid.id === id)?.box];
          return (
            !was || !is || ![was.x - is.x, was.y - is.y, was.w - is.w, was.h - is.h].every((d) => near(d, 0))
          );
        });
        const told = new Set(touched.map(({ part }) => part));
        for (const id of moved)
          expect(told).toContain(doc.shown.layout.parts.find((laid) => laid.id === id)?.part);
        if (touched.length === 0) continue;
        asked++;
        all++;
        const edits2 = keepingDone(doc, edits, touched, touching);
        if (!edits2) continue;
        kept++;
        const held = new Set(touched.map(({ part }) => part));
        const done = carriedOut(doc, { edits: edits2, label: 'x' }, held);
        expect(done).not.toBeNull();
        if (!done) continue;
        for (const id of on) {
          const [was, is] = [boxes.get(id), done.shown.layout.parts.find((laid) => laid.id === id)?.box];
          expect(is, `${id} is there`).toBeDefined();
          if (was && is)
            for (const key of ['x', 'y', 'w', 'h'] as const)
              expect(near(was[key], is[key]), `${id} ${key}`).toBe(true);
        }
        // Rules that hold without a part being kept are not broken by keeping it.
        const fights = (layout: Document['shown']['layout']) =>
          layout.rules.filter(({ holds }) => !holds).length;
        expect(fights(done.shown.layout)).toBeLessThanOrEqual(
          Math.max(fights(after.layout), fights(doc.shown.layout)),
        );
        // And so once more from nothing, as it is written to a file.
        const again = freshDocument(done.design).shown;
        expect(touching.of(doc.shown, again)).toEqual([]);
      }
      expect(asked).toBeGreaterThan(0);
    },
  );

  it('is kept more often than not', () => {
    expect(kept / all).toBeGreaterThan(0.5);
  });

  it('is asked before it is taken, and what is done again is no longer told to be done', async () => {
    await loadTouching();
    const bare = freshDocument(starter('bread-shop'));
    const [part] = bare.design.parts.filter(({ kind }) => kind === 'strip');
    if (!part) throw new Error('no strip');
    const laid = bare.shown.layout.parts.filter((one) => one.part === part.id).map(({ id }) => id);
    const job = saying(undefined, fastenedSaying(bare, laid));
    const store = createEditorStore({ ...bare.design, job }, 'light');
    const before = store.getState().edit;
    const remove: Edit[] = [{ kind: 'remove', list: 'parts', id: part.id }];
    expect(
      commit(
        store,
        [
          ...bare.design.rules.map((rule): Edit => ({ kind: 'remove', list: 'rules', id: rule.id })),
          ...remove,
        ],
        'x',
      ),
    ).toBe(false);
    expect(store.getState().edit).toBe(before);
    const { doneQuestion } = store.getState();
    expect(doneQuestion?.touched).toContainEqual({ part: part.id, how: 'gone' });
    if (!doneQuestion) return;
    expect(keepingDone(before, doneQuestion.edits, doneQuestion.touched, doneQuestion.touching)).toBeNull();
    const edits = [...doneQuestion.edits, ...undoneBy(before, doneQuestion.touched)];
    expect(commit(store, edits, 'x', { settled: true })).toBe(true);
    expect(liveFacts(store.getState().edit.design.job)).toEqual([]);
  });
});
