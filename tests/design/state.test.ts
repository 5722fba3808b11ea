import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdit, applyEdits, type Edit } from '../../src/design/edit/edit.ts';
import { editsToRemove } from '../../src/design/removal.ts';
import type { Design, Rule } from '../../src/design/schema.ts';
import { preview, redo, redoLabel, startState, transact, undo, undoLabel } from '../../src/design/state.ts';

const box = (x: number) => ({ x, y: 0, w: 100, h: 50 });
const strip = (id: string, x = 0) => newPart('strip', { id, name: id, box: box(x) });

function withParts(...ids: string[]): Design {
  return { ...newDesign(), parts: ids.map((id, i) => strip(id, i * 100)) };
}

/** Proves an edit's whole contract: before and after, back again, and through JSON. */
function proveEdit(before: Design, edit: Edit, after: (d: Design) => void) {
  const frozen = structuredClone(before);
  const done = applyEdit(before, edit);
  if (!done.ok) throw new Error(done.problem.code);
  after(done.design);
  expect(before).toEqual(frozen);
  const back = applyEdit(done.design, done.inverse);
  if (!back.ok) throw new Error(back.problem.code);
  expect(back.design).toEqual(before);
  const again = applyEdit(before, JSON.parse(JSON.stringify(edit)) as Edit);
  expect(again.ok && again.design).toEqual(done.design);
}

describe('edits', () => {
  it('insert, remove, replace, move and set do and undo what they say', () => {
    const d = withParts('a', 'b', 'c');
    const ids = (x: Design) => x.parts.map((p) => p.id).join('');
    proveEdit(d, { kind: 'insert', list: 'parts', item: strip('x'), at: 1 }, (x) =>
      expect(ids(x)).toBe('axbc'),
    );
    proveEdit(d, { kind: 'remove', list: 'parts', id: 'b' }, (x) => expect(ids(x)).toBe('ac'));
    proveEdit(d, { kind: 'replace', list: 'parts', id: 'b', item: strip('b', 777) }, (x) => {
      expect(x.parts[1]?.box.x).toBe(777);
    });
    proveEdit(d, { kind: 'move', list: 'parts', id: 'a', to: 2 }, (x) => expect(ids(x)).toBe('bca'));
    proveEdit(d, { kind: 'move', list: 'parts', id: 'c', to: 0 }, (x) => expect(ids(x)).toBe('cab'));
    proveEdit(d, { kind: 'set', field: 'name', value: 'Kiosk' }, (x) => expect(x.name).toBe('Kiosk'));
  });

  it('names what is wrong and changes nothing', () => {
    const d = withParts('a');
    const bad: [Edit, string][] = [
      [{ kind: 'remove', list: 'parts', id: 'z' }, 'no-such-id'],
      [{ kind: 'move', list: 'rules', id: 'z', to: 0 }, 'no-such-id'],
      [{ kind: 'insert', list: 'parts', item: strip('a') }, 'id-taken'],
      [{ kind: 'replace', list: 'parts', id: 'a', item: strip('b') }, 'id-changed'],
    ];
    for (const [edit, code] of bad) {
      const done = applyEdits(d, [{ kind: 'set', field: 'name', value: 'half done' }, edit]);
      expect(done).toMatchObject({ ok: false, problem: { code } });
    }
    expect(d.name).toBe('New face');
  });
});

describe('state', () => {
  it('undoes and redoes a transaction with its selection', () => {
    let s = { ...startState(withParts('a', 'b')), selection: ['a'] as readonly string[] };
    const first = s.design;
    const t = transact(s, {
      edits: [
        { kind: 'remove', list: 'parts', id: 'a' },
        { kind: 'set', field: 'name', value: 'x' },
      ],
      label: 'Remove a',
      selection: ['b'],
    });
    if (!t.ok) throw new Error('refused');
    s = { ...t.state };
    expect(undoLabel(s)).toBe('Remove a');
    const back = undo(s);
    expect(back.design).toEqual(first);
    expect(back.selection).toEqual(['a']);
    expect(redoLabel(back)).toBe('Remove a');
    const again = redo(back);
    expect(again.design).toEqual(s.design);
    expect(again.selection).toEqual(['b']);
    expect(undo(startState(first)).design).toBe(first);
  });

  it('merges steps of one gesture, and not across an undo', () => {
    let s = startState(withParts('a'));
    const nudge = (x: number) => {
      const t = transact(s, {
        edits: [{ kind: 'replace', list: 'parts', id: 'a', item: strip('a', x) }],
        label: 'Nudge',
        merge: 'nudge a',
      });
      if (t.ok) s = t.state;
    };
    for (const x of [1, 2, 3]) nudge(x);
    expect(s.history.done).toHaveLength(1);
    s = undo(s);
    expect(s.design.parts[0]?.box.x).toBe(0);
    s = redo(s);
    expect(s.design.parts[0]?.box.x).toBe(3);
    nudge(9);
    expect(s.history.done).toHaveLength(2);
  });

  it('previews without leaving a trace', () => {
    const s = startState(withParts('a'));
    expect(preview(s, [{ kind: 'remove', list: 'parts', id: 'a' }]).parts).toHaveLength(0);
    expect(preview(s, [{ kind: 'remove', list: 'parts', id: 'nobody' }])).toBe(s.design);
    expect(s.design.parts).toHaveLength(1);
  });

  it('any sequence of edits is taken back to the identical design, and done again to the identical end', () => {
    const edit = fc.oneof(
      fc.nat(30).map((n): Edit => ({ kind: 'insert', list: 'parts', item: strip(`n${n}`, n), at: n % 4 })),
      fc.nat(30).map((n): Edit => ({ kind: 'remove', list: 'parts', id: n % 2 ? `n${n}` : 'a' })),
      fc.nat(300).map((n): Edit => ({ kind: 'replace', list: 'parts', id: 'b', item: strip('b', n) })),
      fc.nat(9).map((n): Edit => ({ kind: 'move', list: 'parts', id: 'c', to: n })),
      fc.string().map((value): Edit => ({ kind: 'set', field: 'note', value })),
    );
    fc.assert(
      fc.property(fc.array(fc.array(edit, { maxLength: 3 }), { maxLength: 25 }), (steps) => {
        const start = withParts('a', 'b', 'c');
        let s = startState(start);
        for (const edits of steps) {
          const t = transact(s, { edits, label: 'step' });
          if (t.ok) s = t.state;
        }
        const end = s.design;
        while (undoLabel(s) !== null) s = undo(s);
        expect(s.design).toEqual(start);
        while (redoLabel(s) !== null) s = redo(s);
        expect(s.design).toEqual(end);
      }),
    );
  });
});

describe('removal', () => {
  it('takes rules, joints and memberships along and lets go of what lay on top', () => {
    const rules: Rule[] = [
      {
        id: 'r1',
        kind: 'set',
        axis: 'x',
        edge: { of: 'a', side: 'low' },
        from: { of: 'face', side: 'low' },
        distance: 5,
      },
      { id: 'r2', kind: 'same', axis: 'x', parts: ['a', 'b', 'c'] },
      {
        id: 'r3',
        kind: 'graded',
        axis: 'y',
        parts: ['a', 'b'],
        ratio: [1, 2],
        gap: 0,
        low: { of: 'face', side: 'low' },
        high: { of: 'face', side: 'high' },
      },
      {
        id: 'r4',
        kind: 'center',
        axis: 'x',
        parts: ['b'],
        low: { of: 'a[1,0]', side: 'high' },
        high: { of: 'face', side: 'high' },
      },
      { id: 'r5', kind: 'mirror', axis: 'x', part: 'b', twin: 'c', about: { of: 'face', side: 'mid' } },
    ];
    const start: Design = {
      ...withParts('a', 'b', 'c'),
      rules,
      joints: [{ id: 'j1', parts: ['a', 'b'], kind: 'butt', through: 'a' }],
      groups: [
        { id: 'g1', name: 'g1', parts: ['a', 'b'] },
        { id: 'g2', name: 'g2', parts: ['a'] },
      ],
    };
    const lying = { ...start, parts: start.parts.map((p) => (p.id === 'c' ? { ...p, on: 'a' } : p)) };
    const done = applyEdits(lying, editsToRemove(lying, ['a']));
    if (!done.ok) throw new Error('refused');
    const d = done.design;
    expect(d.parts.map((p) => [p.id, p.on])).toEqual([
      ['b', 'face'],
      ['c', 'face'],
    ]);
    expect(d.rules.map((r) => r.id)).toEqual(['r2', 'r3', 'r5']);
    expect(d.rules[0]).toMatchObject({ parts: ['b', 'c'] });
    expect(d.rules[1]).toMatchObject({ parts: ['b'], ratio: [2] });
    expect(d.joints).toEqual([]);
    expect(d.groups).toEqual([{ id: 'g1', name: 'g1', parts: ['b'] }]);
    const back = applyEdits(d, done.inverse);
    expect(back.ok && back.design).toEqual(lying);
  });
});
