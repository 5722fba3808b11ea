import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design } from '../../src/design/schema.ts';
import { editsToDrop, editsToName } from '../../src/editor/edit/partList.ts';
import { runs } from '../runs.ts';

const box = { x: 100, y: 100, w: 200, h: 300 };
const withParts = (count: number): Design => ({
  ...newDesign(),
  parts: Array.from({ length: count }, (_, i) => newPart('panel', { id: `p${i}`, name: `P ${i}`, box })),
});
const done = (design: Design, edits: Parameters<typeof applyEdits>[1]): Design => {
  const result = applyEdits(design, edits);
  if (!result.ok) throw new Error('refused');
  return result.design;
};
const order = (design: Design) => design.parts.map(({ id }) => id);

describe('a drop in the part list', () => {
  it('puts a part right over or under the row, and leaves the order of the others', () => {
    const count = 7;
    const index = fc.nat({ max: count - 1 });
    fc.assert(
      fc.property(index, index, fc.constantFrom('before', 'after'), (from, to, place) => {
        const design = withParts(count);
        const [id, target] = [`p${from}`, `p${to}`];
        const after = order(done(design, editsToDrop(design, id, { target, place })));
        expect(after.filter((one) => one !== id)).toEqual(order(design).filter((one) => one !== id));
        if (from !== to) expect(after.indexOf(id) - after.indexOf(target)).toBe(place === 'before' ? -1 : 1);
      }),
      { numRuns: runs(200) },
    );
  });

  it('orders the parts of a group within it, and takes none out of it', () => {
    const design = { ...withParts(4), groups: [{ id: 'g', name: 'G', parts: ['p0', 'p1', 'p2'] }] };
    const inside = editsToDrop(design, 'p0', { target: 'p2', place: 'after' });
    expect(done(design, inside).groups[0]?.parts).toEqual(['p1', 'p2', 'p0']);
    expect(editsToDrop(design, 'p0', { target: 'p3', place: 'after' })).toEqual([]);
  });

  it('on a part lays it there, but for what lies on itself', () => {
    const design = withParts(3);
    const laid = done(design, editsToDrop(design, 'p0', { target: 'p1', place: 'onto' }));
    expect(laid.parts[0]).toMatchObject({ on: 'p1', onChosen: true });
    expect(editsToDrop(laid, 'p1', { target: 'p0', place: 'onto' })).toEqual([]);
    const stacked = done(laid, editsToDrop(laid, 'p1', { target: 'p2', place: 'onto' }));
    expect(editsToDrop(stacked, 'p2', { target: 'p0', place: 'onto' })).toEqual([]);
  });
});

it('a name is taken without the blanks around it; nothing is no name', () => {
  const design = withParts(1);
  expect(done(design, editsToName(design, 'p0', ' Left door ')).parts[0]?.name).toBe('Left door');
  expect(editsToName(design, 'p0', '  ')).toEqual([]);
  expect(editsToName(design, 'p0', 'P 0')).toEqual([]);
});
