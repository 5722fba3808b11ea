import { expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { ownCopy } from '../../src/design/ownCopy.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { changesLayout, layoutChange } from '../../src/editor/frame/layoutChange.ts';
import { tables } from '../../src/editor/shipped/tables.ts';

/** An inch is 25.4 mm exactly (international yard and pound agreement of 1959). */
const INCH = 25.4;
/** A dressed 1x3 by its name (PS 20, minimum dressed sizes, from memory). */
const NAMED = 2.5 * INCH;
/** What a rule reads on a board of that name. */
const READ = { width: (2 + 9 / 16) * INCH, thickness: (23 / 32) * INCH };

function threeStiles(): Design {
  const design = newDesign();
  const stile = (id: string, x: number): Part => ({
    ...newPart('strip', { id, name: id, stock: 'pine-1x3', box: { x, y: 300, w: NAMED, h: 800 } }),
    lie: 'up',
  });
  const rule = {
    id: 'even',
    kind: 'even',
    axis: 'x',
    parts: ['a', 'b', 'c'],
    low: { of: 'face', side: 'low' },
    high: { of: 'face', side: 'high' },
    mode: 'gaps',
  } as Design['rules'][number];
  return { ...design, parts: [stile('a', 100), stile('b', 400), stile('c', 700)], rules: [rule] };
}

it('a 1 x 3 that is 2 9/16 wide and 23/32 thick moves what follows from it, told before it is taken', () => {
  const design = threeStiles();
  const table = tables().stocks.find(({ id }) => id === 'pine-1x3');
  if (table?.form !== 'flat') throw new Error('no 1 x 3');
  const copied = { ...design, stocks: [ownCopy(table)] };
  const now = shownFrom(copied);
  // Gaps of three stiles in a span: what they leave, in four.
  const gap = (wide: number) => (now.face.width - 3 * wide) / 4;
  expect(now.layout.boxes.get('a')?.x).toBeCloseTo(gap(NAMED), 6);
  const change = layoutChange(now, { stocks: [{ ...ownCopy(table), ...READ } as Design['stocks'][number]] });
  expect(changesLayout(change)).toBe(true);
  expect(change.moved.map(({ part, what }) => [part, what])).toEqual([
    ['a', 'resized'],
    ['b', 'resized'],
    ['c', 'resized'],
  ]);
  for (const { grown } of change.moved) expect(grown.w).toBeCloseTo(INCH / 16, 6);
  const boxes = change.shown.layout.boxes;
  for (const [i, id] of ['a', 'b', 'c'].entries())
    expect(boxes.get(id)?.x).toBeCloseTo(gap(READ.width) + i * (gap(READ.width) + READ.width), 6);
  const laid = change.shown.layout.parts.find(({ id }) => id === 'a');
  expect(laid && laid.z1 - laid.z0).toBeCloseTo(READ.thickness, 6);
  // The same stock by its own sizes moves nothing, and is not asked about.
  expect(changesLayout(layoutChange(now, { stocks: [ownCopy(table)] }))).toBe(false);
});
