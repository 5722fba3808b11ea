import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { checksOn, partFacts } from '../../src/editor/pane/parts/partFacts.ts';
import { KEEP_CLEARS, treeRows } from '../../src/editor/pane/parts/rows.ts';
import { treeMove } from '../../src/editor/pane/parts/treeKeys.ts';
import { layoutOf } from './laid.ts';

const box = { x: 0, y: 0, w: 10, h: 10 };
const design = {
  ...newDesign(),
  parts: ['door', 'pull', 'sign'].map((id) => newPart('panel', { id, name: id, box })),
  groups: [{ id: 'g', name: 'Group', parts: ['door', 'pull'] }],
  keepClears: [{ id: 'k', name: 'Leg', why: 'leg', box, height: 0 }] as const,
};
const rows = treeRows({ ...design, keepClears: [...design.keepClears] }, new Set(), 'Keep-clears');
const row = (id: string) => {
  const found = rows.find((r) => r.id === id);
  if (!found) throw new Error(id);
  return found;
};

describe('the part tree', () => {
  it('lists groups with their parts, then single parts, then keep-clears', () => {
    expect(rows.map((r) => r.id)).toEqual(['g', 'door', 'pull', 'sign', KEEP_CLEARS, 'k']);
    expect(rows.map((r) => r.level)).toEqual([1, 2, 2, 1, 1, 2]);
    expect([row('pull').at, row('pull').of, row('sign').at, row('sign').of]).toEqual([2, 2, 2, 3]);
  });

  it('walks as trees do: right opens or goes in, left closes or goes out', () => {
    expect(treeMove('ArrowDown', rows, row('g'))).toEqual({ act: 'go', row: row('door') });
    expect(treeMove('ArrowRight', rows, row('g'))).toEqual({ act: 'go', row: row('door') });
    expect(treeMove('ArrowRight', rows, { ...row('g'), open: false })).toEqual({ act: 'open' });
    expect(treeMove('ArrowLeft', rows, row('pull'))).toEqual({ act: 'go', row: row('g') });
    expect(treeMove('ArrowLeft', rows, row('g'))).toEqual({ act: 'close' });
    expect(treeMove('End', rows, row('g'))).toEqual({ act: 'go', row: row('k') });
    expect(treeMove('q', rows, row('g'))).toBeNull();
  });
});

describe('what the lists tell of parts', () => {
  it('a fitting has its own color and is no bare wood; members of a row that stand in something count for the row', () => {
    const box = { x: 100, y: 200, w: 300, h: 300 };
    const parts = [
      newPart('fitting', { id: 'pull', name: 'Pull', box }),
      newPart('panel', { id: 'panel', name: 'Panel', box, finish: null }),
      newPart('array', { id: 'row', name: 'Row', box, stock: 'pine-1x2' }),
    ];
    const design = { ...newDesign(), parts };
    const layout = layoutOf(design);
    const told = new Map(partFacts(design, layout).map((of) => [of.id, of]));
    expect(told.get('pull')?.finish).toBe('its own color');
    expect(told.get('panel')?.finish).toBe('Bare wood');
    expect(layout.checks.some((c) => c.parts.some((id) => id.startsWith('row[')))).toBe(true);
    expect(checksOn(layout)(['row'])).toBeGreaterThan(0);
    expect(checksOn(layout)(['row', 'panel', 'pull'])).toBe(layout.checks.length);
  });
});
