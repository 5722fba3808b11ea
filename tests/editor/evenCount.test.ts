import { expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Rule } from '../../src/design/schema.ts';
import { startState, transact, undo } from '../../src/design/state.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { editsToRecount } from '../../src/editor/edit/evenCount.ts';

const row: Extract<Rule, { kind: 'even' }> = {
  id: 'row',
  kind: 'even',
  axis: 'x',
  parts: ['a', 'b', 'c'],
  low: { of: 'face', side: 'low' },
  high: { of: 'face', side: 'high' },
  mode: 'most',
  most: 150,
};

function face(): Design {
  const parts = row.parts.map((id, i) => ({
    ...newPart('strip', {
      id,
      name: `Batten ${i + 1}`,
      box: { x: 100 * i, y: 200, w: 38, h: 600 },
      stock: 'pine-1x2',
    }),
    lie: 'up' as const,
  }));
  return { ...newDesign(), parts, rules: [row], groups: [{ id: 'g', name: 'Battens', parts: row.parts }] };
}

it('copies join the row and its group under names of their own, as one step that undo takes back whole', () => {
  const design = face();
  const done = transact(startState(design), {
    edits: editsToRecount(shownFrom(design), row, 5),
    label: 'Count',
  });
  if (!done.ok) throw new Error(done.problem.code);
  const made = done.state.design;
  expect(made.parts.map((p) => p.name)).toEqual(['Batten 1', 'Batten 2', 'Batten 3', 'Batten 4', 'Batten 5']);
  expect(made.groups[0]?.parts).toEqual(made.parts.map((p) => p.id));
  const { rules, boxes } = shownFrom(made).layout;
  expect(rules.every((r) => r.holds)).toBe(true);
  expect(new Set([...boxes.values()].map((b) => `${b.y} ${b.h}`)).size).toBe(1);
  expect(undo(done.state).design).toEqual(design);
});

it('the last ones go with their places in group and row, as one step', () => {
  const design = face();
  const done = transact(startState(design), {
    edits: editsToRecount(shownFrom(design), row, 1),
    label: 'Count',
  });
  if (!done.ok) throw new Error(done.problem.code);
  const made = done.state.design;
  expect(made.parts.map((p) => p.id)).toEqual(['a']);
  expect(made.rules).toEqual([{ ...row, parts: ['a'] }]);
  expect(made.groups[0]?.parts).toEqual(['a']);
  expect(undo(done.state).design).toEqual(design);
});
