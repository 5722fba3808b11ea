import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { type Design, designSchema, type PartArray } from '../../src/design/schema.ts';
import { preview, startState } from '../../src/design/state.ts';
import { freshDocument } from '../../src/editor/document/document.ts';
import { memberMarks } from '../../src/editor/drawing/members.ts';
import { editsToRepeat, memberOf, repeated, withMemberKind } from '../../src/editor/edit/member.ts';
import {
  chooseMemberAt,
  chosenMember,
  commitOverride,
  enterMembers,
  stepMember,
  toggleMember,
  withOverride,
} from '../../src/editor/edit/members.ts';
import { undoStep } from '../../src/editor/state/commit.ts';
import { createEditorStore } from '../../src/editor/state/store.ts';
import { layoutOf } from './laid.ts';

/** Three columns by two rows of panels, 100 by 80, ends flush: starts 0, 200, 400 and 0, 220. */
const tiles: PartArray = {
  ...newPart('array', { id: 'tiles', name: 'Tiles', box: { x: 100, y: 200, w: 500, h: 300 } }),
  member: memberOf(
    newPart('panel', { id: 'x', name: 'x', box: { x: 0, y: 0, w: 1, h: 1 }, finish: 'ground' }),
  ),
  memberSize: { w: 100, h: 80 },
  across: { mode: 'flush', count: 3 },
  up: { mode: 'flush', count: 2 },
};

function bench(array: PartArray = tiles) {
  const design: Design = { ...newDesign(), parts: [array] };
  const store = createEditorStore(design, 'light');
  store.setState({ edit: { ...freshDocument(design), selection: [array.id] } });
  const now = () => store.getState().edit.design.parts[0] as PartArray;
  const laid = () => layoutOf(store.getState().edit.design).parts;
  return { store, now, laid };
}

describe('single members of an array', () => {
  it('are chosen at a point, and by arrow keys from there', () => {
    const { store } = bench();
    expect(stepMember(store, 1, 0)).toBe(false);
    expect(chooseMemberAt(store, { x: 250, y: 250 })).toBe(false);
    expect(chooseMemberAt(store, { x: 350, y: 450 })).toBe(true);
    expect(store.getState().member).toBe('tiles[1,1]');
    stepMember(store, 1, 0);
    stepMember(store, 0, -1);
    expect(store.getState().member).toBe('tiles[2,0]');
    expect(stepMember(store, 1, 0)).toBe(true);
    expect(store.getState().member).toBe('tiles[2,0]');
    store.setState((s) => ({ edit: { ...s.edit, selection: [] } }));
    expect(chosenMember(store.getState())).toBeNull();
    expect(enterMembers(store)).toBe(false);
  });

  it('are left out and put back, one undo each, and can be found while they are out', () => {
    const { store, now, laid } = bench();
    expect(toggleMember(store)).toBe(false);
    enterMembers(store);
    expect(store.getState().member).toBe('tiles[0,0]');
    toggleMember(store);
    expect(now().overrides).toEqual({ '0,0': { omit: true } });
    expect(laid().map((p) => p.id)).not.toContain('tiles[0,0]');
    expect(laid()).toHaveLength(5);
    expect(chooseMemberAt(store, { x: 150, y: 240 })).toBe(true);
    const { design } = store.getState().edit;
    expect(memberMarks(design, layoutOf(design), 'tiles', null)).toEqual({
      chosen: null,
      boxes: [{ x: 100, y: 200, w: 100, h: 80 }],
    });
    toggleMember(store);
    expect(now().overrides).toEqual({});
    undoStep(store);
    undoStep(store);
    expect(now()).toEqual(tiles);
  });

  it('take a finish and a stock of their own, and lose what is the same as the others', () => {
    const { store, now, laid } = bench();
    enterMembers(store);
    const found = chosenMember(store.getState());
    if (!found?.slot) throw new Error('no member is chosen');
    commitOverride(store, found, found.slot, { finish: 'trim', stock: 'mdf-half' });
    const one = laid().find((p) => p.id === 'tiles[0,0]');
    expect([one?.finish, one?.stock]).toEqual(['trim', 'mdf-half']);
    expect(laid().filter((p) => p.finish === 'ground')).toHaveLength(5);
    expect(withOverride(now(), found.slot, { finish: 'ground', stock: 'mdf-quarter' }).overrides).toEqual({});
    expect(withOverride(now(), found.slot, { finish: null }).overrides).toEqual({ '0,0': { finish: null } });
    expect(designSchema.safeParse(store.getState().edit.design).success).toBe(true);
  });
});

describe('what an array is made of', () => {
  it('changes to every kind, and each one is laid', () => {
    const battens = newPart('array', { id: 'tiles', name: 'Battens', box: tiles.box, stock: 'pine-1x3' });
    const differing = {
      ...battens,
      overrides: { '0,0': { omit: true, stock: 'pine-1x4' }, '1,0': { stock: 'pine-1x4' } },
    };
    for (const kind of ['run', 'panel', 'fitting', 'painted'] as const) {
      const made = withMemberKind(differing, kind);
      const design: Design = { ...newDesign(), parts: [made] };
      expect(designSchema.safeParse(design).success).toBe(true);
      expect(made.overrides).toEqual({ '0,0': { omit: true } });
      const kinds = layoutOf(design).parts.map((p) => p.kind);
      expect(kinds).toEqual([kind, kind, kind, kind]);
    }
    const run = withMemberKind(differing, 'run');
    expect(run.member).toMatchObject({ kind: 'run', stock: 'pine-1x3' });
    expect(withMemberKind(run, 'strip').member).toMatchObject({
      kind: 'strip',
      stock: 'pine-1x3',
      lie: 'up',
    });
  });
});

describe('repeating a part', () => {
  const batten = {
    ...newPart('strip', {
      id: 'b',
      name: 'Batten',
      box: { x: 50, y: 60, w: 63.5, h: 900 },
      stock: 'pine-1x3',
      finish: 'trim',
    }),
    lie: 'up' as const,
  };

  it('keeps stock, finish and size, the first one in its place', () => {
    const design: Design = {
      ...newDesign(),
      parts: [repeated(batten, batten.box, { columns: 4, rows: 1, gap: 50 })],
    };
    expect(designSchema.safeParse(design).success).toBe(true);
    const laid = layoutOf(design).parts;
    expect(laid.map((p) => Math.round(p.box.x * 1e6) / 1e6)).toEqual([50, 163.5, 277, 390.5]);
    for (const part of laid) {
      expect(part).toMatchObject({ kind: 'strip', stock: 'pine-1x3', finish: 'trim' });
      expect([part.box.y, part.box.w, part.box.h]).toEqual([60, 63.5, 900]);
    }
  });

  it('repeats both ways, and drops the rules that would squeeze it', () => {
    const panel = newPart('panel', { id: 'p', name: 'Panel', box: { x: 0, y: 0, w: 100, h: 80 } });
    const edge = (side: 'low' | 'high') => ({ of: 'face', side });
    const design: Design = {
      ...newDesign(),
      parts: [panel],
      rules: [
        {
          id: 'x',
          kind: 'between',
          axis: 'x',
          part: 'p',
          low: edge('low'),
          high: edge('high'),
          insetLow: 10,
          insetHigh: 10,
        },
        { id: 'c', kind: 'center', axis: 'y', parts: ['p'], low: edge('low'), high: edge('high') },
      ],
    };
    const box = { x: 10, y: 300, w: 100, h: 80 };
    const after = preview(
      startState(design),
      editsToRepeat(design, panel, box, { columns: 3, rows: 2, gap: 20 }),
    );
    expect(after.rules.map((r) => r.id)).toEqual(['c']);
    expect(after.parts[0]).toMatchObject({ kind: 'array', box: { x: 10, y: 300, w: 340, h: 180 } });
    expect(layoutOf(after).parts).toHaveLength(6);
    expect(editsToRepeat(design, panel, box, { columns: 1, rows: 1, gap: 20 })).toEqual([]);
  });
});

describe('the pieces of a fill', () => {
  const boards = newPart('fill', {
    id: 'boards',
    name: 'Boards',
    box: { x: 100, y: 200, w: 500, h: 300 },
    finish: 'ground',
  });

  it('are chosen at a point and one after the other, left out, painted, and put back', () => {
    const design: Design = { ...newDesign(), parts: [boards] };
    const store = createEditorStore(design, 'light');
    store.setState({ edit: { ...freshDocument(design), selection: ['boards'] } });
    const now = () => store.getState().edit.design.parts[0];
    // Boards of 3 1/2 in on 500 mm, 88.9 each: five whole ones and two of 27.75 would be under half, so four and two.
    const slots = chosenMember(store.getState())?.grid.slots ?? [];
    expect(slots.map(({ box }) => Math.round(box.w))).toEqual([72, 89, 89, 89, 89, 72]);
    expect(chooseMemberAt(store, { x: 180, y: 300 })).toBe(true);
    expect(store.getState().member).toBe('boards[1,0]');
    stepMember(store, 1, 0);
    expect(store.getState().member).toBe('boards[2,0]');
    toggleMember(store);
    expect(now()).toMatchObject({ overrides: { '2,0': { omit: true } } });
    expect(layoutOf(store.getState().edit.design).parts).toHaveLength(5);
    expect(chooseMemberAt(store, { x: 300, y: 300 })).toBe(true);
    toggleMember(store);
    expect(now()).toMatchObject({ overrides: {} });
    const found = chosenMember(store.getState());
    const slot = found?.slot;
    if (found && slot) commitOverride(store, found, slot, { finish: 'trim' });
    expect(layoutOf(store.getState().edit.design).parts[2]?.finish).toBe('trim');
    undoStep(store);
    expect(now()).toEqual(boards);
  });
});
