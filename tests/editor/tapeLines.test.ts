import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lanesOf, tapeLines } from '../../src/editor/canvas/tapeLines.ts';
import { runs } from '../runs.ts';

const box = (x: number, y: number, w: number, h: number) => ({ x, y, w, h });

it('every edge is told once, with the part nearest to the datum, and that it is selected', () => {
  const parts = [
    { part: 'a', box: box(10, 50, 30, 20) },
    { part: 'b', box: box(40, 20, 30, 20) },
  ];
  expect(tapeLines(parts, 'x', new Set(['b']))).toEqual([
    { at: 10, reach: 50, own: false },
    { at: 40, reach: 20, own: true },
    { at: 70, reach: 20, own: true },
  ]);
  expect(tapeLines(parts, 'y', new Set()).map(({ at }) => at)).toEqual([20, 40, 50, 70]);
});

it('no label covers another, one is left out only where all lanes are taken, and what is selected comes first', () => {
  const line = fc.record({ at: fc.nat({ max: 600 }), own: fc.boolean() });
  fc.assert(
    fc.property(fc.array(line, { maxLength: 40 }), fc.integer({ min: 1, max: 3 }), (lines, lanes) => {
      const found = lanesOf(lines, 60, lanes);
      const near = (i: number, j: number) => Math.abs((lines[i]?.at ?? 0) - (lines[j]?.at ?? 0)) < 60;
      found.forEach((lane, i) => {
        const there = found.flatMap((other, j) => (j !== i && other !== null && near(i, j) ? [other] : []));
        if (lane === null) expect(new Set(there).size).toBe(lanes);
        else expect(there).not.toContain(lane);
        if (lane === null && lines[i]?.own) {
          const own = found.filter((_, j) => lines[j]?.own && near(i, j)).filter((one) => one !== null);
          expect(new Set(own).size).toBe(lanes);
        }
      });
    }),
    { numRuns: runs(300) },
  );
});
