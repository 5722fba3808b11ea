import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Bed } from '../../src/bed/bed.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { swingMends } from '../../src/editor/edit/swingMends.ts';
import { runs } from '../runs.ts';
import { layoutOf } from './laid.ts';

/** Room that a warning asks for, and what sampling by half degrees may miss of it. */
const TIGHT = 6;
const MISSED = 0.1;

/**
 * How far a part keeps from floor, wall and ceiling, by turning its four corners half a degree at a time: a place `up`
 * the face from the pivot and `out` of it comes to up sin a + out cos a from the wall and up cos a - out sin a above
 * the pivot. Lowered, it has to stay above the feet of the legs as well.
 */
function clearOf(design: Design): number {
  const { bed } = design;
  const laid = layoutOf(design).parts.find(({ id }) => id === 'one');
  if (!laid) throw new Error('not laid');
  const { box, z0, z1 } = laid;
  const found = [bed.legs.length - z1];
  for (const [y, z] of [
    [box.y, z0],
    [box.y, z1],
    [box.y + box.h, z0],
    [box.y + box.h, z1],
  ] as const) {
    const [up, out] = [y - bed.pivot.aboveEdge, z + bed.pivot.fromFace];
    for (let half = 0; half <= 180; half++) {
      const a = (half * Math.PI) / 360;
      const [x, above] = [up * Math.sin(a) + out * Math.cos(a), up * Math.cos(a) - out * Math.sin(a)];
      found.push(bed.pivot.fromWall + x, bed.pivot.height + above, bed.ceiling - bed.pivot.height - above);
    }
  }
  return Math.min(...found);
}

it('parts of random beds that hit floor, wall or ceiling clear them once mended, and go no farther than it takes', () => {
  const plain = newDesign();
  const tenths = (min: number, max: number) =>
    fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
  let mended = 0;
  fc.assert(
    fc.property(
      fc.record({
        y: fc.oneof(tenths(-300, 100), tenths(1500, 2100)),
        h: tenths(60, 500),
        fromWall: tenths(90, 250),
        height: tenths(230, 350),
        ceiling: tenths(2150, 2450),
        sheet: fc.constantFrom('mdf-half', 'mdf-three-quarter', 'mdf-quarter'),
      }),
      ({ y, h, fromWall, height, ceiling, sheet }) => {
        const bed: Bed = {
          ...plain.bed,
          pivot: { ...plain.bed.pivot, fromWall, height },
          ceiling,
          wallBoard: { thickness: 0, height: 0 },
        };
        const part = newPart('panel', {
          id: 'one',
          name: 'One',
          box: { x: 300, y, w: 300, h },
          stock: sheet,
        });
        const design: Design = { ...plain, bed, parts: [{ ...part, on: 'rim' }] };
        if (clearOf(design) > -1) return;
        const check = { code: 'fold.hits-wall', severity: 'error', parts: ['one'], figures: {} } as const;
        for (const { edits, how, by = 0 } of swingMends(shownFrom(design), [check])) {
          const done = applyEdits(design, edits);
          if (!done.ok) throw new Error('refused');
          const clear = clearOf(done.design);
          expect(clear, how).toBeGreaterThan(-MISSED);
          mended++;
          if (how !== 'move') continue;
          // A little less of the move leaves it tight: a box grown by that room along both of its sides reaches a
          // corner's way by their diagonal at most.
          const less = design.parts.map((one) => ({
            ...one,
            box: { ...one.box, y: one.box.y + by - Math.sign(by) * 1 },
          }));
          expect(clearOf({ ...design, parts: less }), how).toBeLessThan(Math.hypot(TIGHT, TIGHT) + MISSED);
        }
      },
    ),
    { numRuns: runs(40) },
  );
  expect(mended).toBeGreaterThan(5);
  process.stdout.write(`${mended} ways to mend.\n`);
});
