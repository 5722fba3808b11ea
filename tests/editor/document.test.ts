import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Edit } from '../../src/design/edit/edit.ts';
import { redo, undo } from '../../src/design/state.ts';
import {
  carriedOut,
  type Document,
  documentOf,
  freshDocument,
  tried,
} from '../../src/editor/document/document.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { startMove } from '../../src/editor/gesture/move.ts';
import { select } from '../../src/editor/state/commit.ts';
import { createEditorStore } from '../../src/editor/state/store.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { FACE_STAGES } from '../../src/plan/stages/face.ts';
import { allParts, someRules } from '../layout/arbitrary.ts';
import { at, panel } from '../layout/sample.ts';
import { runs } from '../runs.ts';

/** How many layouts an act takes, whole ones and steps. */
function layoutsOf(act: () => unknown): number {
  const laid = vi.spyOn(FACE_STAGES, 'planned');
  act();
  // A stage whose inputs are the very same comes to what it came to.
  const made = laid.mock.results.filter(({ value }, i) => value !== laid.mock.calls[i]?.[1]);
  laid.mockRestore();
  return made.length;
}

const nth = fc.nat(7);
const by = fc.integer({ min: -60, max: 60 });
const deed = fc.oneof(
  fc.record({ do: fc.constant('carry' as const), nth, dx: by, dy: by }),
  fc.record({ do: fc.constant('move' as const), nth, dx: by, dy: by }),
  fc.record({ do: fc.constant('drop' as const), nth }),
  fc.record({ do: fc.constant('bed' as const), by }),
  fc.record({ do: fc.constant('undo' as const) }),
  fc.record({ do: fc.constant('redo' as const) }),
);

/** What comes out, without what it is made from the next time. */
const told = ({ layout, face, keepClears, looks }: ReturnType<typeof shownFrom>) => ({
  ...{ layout, face, keepClears, looks },
});

describe('the document', () => {
  it('is after any edits, steps of a drag, undo and redo what its design comes to from nothing', () => {
    fc.assert(
      fc.property(allParts, someRules(6), fc.array(deed, { maxLength: 8 }), (parts, rules, deeds) => {
        let doc: Document = freshDocument({ ...newDesign(), parts, rules });
        let shown = doc.shown;
        for (const done of deeds) {
          const item = 'nth' in done ? doc.design.parts[done.nth % doc.design.parts.length] : undefined;
          if ((done.do === 'carry' || done.do === 'move') && item) {
            const box = { ...item.box, x: item.box.x + done.dx, y: item.box.y + done.dy };
            const edits: Edit[] = [{ kind: 'replace', list: 'parts', id: item.id, item: { ...item, box } }];
            const held = new Set([item.id]);
            shown = tried(doc, edits, held, shown);
            expect(told(shown)).toEqual(told(shownFrom(shown.design, held)));
            if (done.do === 'move') doc = carriedOut(doc, { edits, label: 'Move' }, held) ?? doc;
          }
          const rule = 'nth' in done ? doc.design.rules[done.nth] : undefined;
          if (done.do === 'drop' && rule) {
            const edits: Edit[] = [{ kind: 'remove', list: 'rules', id: rule.id }];
            doc = carriedOut(doc, { edits, label: 'Let go' }) ?? doc;
          }
          if (done.do === 'bed') {
            const { bed } = doc.design;
            const mattress = { ...bed.mattress, width: bed.mattress.width + done.by };
            const edits: Edit[] = [{ kind: 'set', field: 'bed', value: { ...bed, mattress } }];
            doc = carriedOut(doc, { edits, label: 'Bed' }) ?? doc;
          }
          if (done.do === 'undo') doc = documentOf(undo(doc), doc.shown);
          if (done.do === 'redo') doc = documentOf(redo(doc), doc.shown);
          expect(doc.shown.design).toBe(doc.design);
          expect(told(doc.shown)).toEqual(told(shownFrom(doc.design)));
        }
      }),
      { numRuns: runs(6) },
    );
  });

  it('keeps what an edit does not touch the very same, and is whole where the edit settles nothing', () => {
    const [a, b] = [panel('a', at(100, 100, 50, 50)), panel('b', at(300, 100, 50, 50))];
    const doc = freshDocument({ ...newDesign(), parts: [a, b] });
    const item = { ...b, box: at(400, 100, 50, 50) };
    const edits: Edit[] = [{ kind: 'replace', list: 'parts', id: 'b', item }];
    const last = tried(doc, edits, new Set(['b']));
    const done = carriedOut(doc, { edits, label: 'Move' }, new Set(['b']));
    expect(done?.shown.layout.parts[0]).toBe(doc.shown.layout.parts[0]);
    expect(done?.shown.face).toBe(doc.shown.face);
    expect(done?.shown.looks).toBe(doc.shown.looks);
    expect(done?.shown.layout).toEqual(last.layout);
    expect(doc.shown.layout.boxes.get('b')?.x).toBe(300);
    expect(carriedOut(doc, { edits: [{ kind: 'remove', list: 'parts', id: 'c' }], label: 'No' })).toBeNull();
  });
});

it('a drag over what the part then lies on lays nothing anew but the part', () => {
  const board = (id: string, box: Box) => newPart('panel', { id, name: id, box });
  const parts = [board('a', at(100, 100, 50, 50)), board('board', at(300, 300, 400, 400))];
  const store = createEditorStore({ ...newDesign(), parts }, 'light');
  store.setState({ view: { scale: 1, x: 0, y: 0 } });
  select(store, ['a']);
  const touch = (x: number, y: number) => ({
    ...{ px: { x, y: -y }, face: { x, y }, shift: false, free: true, touch: false },
  });
  const drag = startMove(store, touch(125, 125));
  const step = (x: number) => {
    drag?.move(touch(x, 450));
    return store.getState().provisional?.shown;
  };
  const off = step(200);
  const onto = step(425);
  const [one, next] = [step(430), step(440)];
  // Paint looks the same wherever its board lies: the drawing goes on as it was, but where parts are.
  expect([off, onto].map((shown) => shown?.design.parts[0]?.on)).toEqual(['face', 'board']);
  expect(onto?.looks).toBe(off?.looks);
  expect(next?.design.parts[0]).toMatchObject({ on: 'board', box: { x: 415 } });
  expect(next && told(next)).toEqual(next && told(shownFrom(next.design, next.held)));
  // What a whole layout makes anew.
  expect(next?.planned.placement.ranks).toBe(one?.planned.placement.ranks);
});

describe('layouts are counted', () => {
  const [a, b] = [panel('a', at(100, 100, 50, 50)), panel('b', at(300, 100, 50, 50))];
  const bench = () => {
    const store = createEditorStore({ ...newDesign(), parts: [a, b] }, 'light');
    store.setState({ view: { scale: 1, x: 0, y: 0 } });
    select(store, ['a']);
    return store;
  };
  const touch = (x: number, y: number) => ({
    ...{ px: { x, y: -y }, face: { x, y }, shift: false, free: true, touch: false },
  });

  it('an edit that settles nothing is laid out once, and no other time until the next', () => {
    const doc = freshDocument({ ...newDesign(), parts: [a, b] });
    const edits: Edit[] = [
      { kind: 'replace', list: 'parts', id: 'b', item: { ...b, box: at(420, 100, 50, 50) } },
    ];
    let done: Document | null = null;
    expect(layoutsOf(() => (done = carriedOut(doc, { edits, label: 'Move' })))).toBe(1);
    expect(layoutsOf(() => done && tried(done, [], done.shown.held))).toBe(0);
  });

  it('letting go takes the last step as it is, and one more for what the hand no longer holds', () => {
    const store = bench();
    const drag = startMove(store, touch(125, 125));
    expect(layoutsOf(() => drag?.move(touch(180, 160)))).toBe(1);
    const last = store.getState().provisional?.shown;
    expect(layoutsOf(() => drag?.end(touch(180, 160)))).toBe(1);
    const { design, shown } = store.getState().edit;
    expect(design.parts).toEqual(last?.design.parts);
    expect(told(shown)).toEqual(told(shownFrom(design)));
  });
});
