import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Chip, chipBox, placeChips } from '../../src/editor/canvas/chips.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { runs } from '../runs.ts';

const meet = (a: Box, b: Box) =>
  Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x) > 1e-9 &&
  Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y) > 1e-9;
const middle = ({ from, to }: Chip) => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });

it('figures stay in the middle of their lines where nothing is, and keep clear of few lines and a thin part', () => {
  const place = fc.integer({ min: 0, max: 600 });
  const chip = fc.record({ x: place, y: place, long: fc.integer({ min: 20, max: 200 }), up: fc.boolean() });
  fc.assert(
    fc.property(fc.array(chip, { minLength: 1, maxLength: 4 }), place, place, (lines, x, y) => {
      const chips = lines.map(
        (line): Chip => ({
          from: line,
          to: line.up ? { x: line.x, y: line.y + line.long } : { x: line.x + line.long, y: line.y },
          axis: line.up ? 'y' : 'x',
          text: '24 1/2"',
          fixed: false,
        }),
      );
      const thin = { x, y, w: 18, h: 300 };
      const found = placeChips(chips, [thin]);
      const boxes = found.map((at) => chipBox('24 1/2"', at));
      boxes.forEach((box, i) => {
        expect(meet(box, thin)).toBe(false);
        expect(boxes.filter((other, j) => i !== j && meet(box, other))).toEqual([]);
      });
      const own = chips.map((one) => chipBox(one.text, middle(one)));
      if (own.every((a, i) => !meet(a, thin) && own.every((b, j) => i === j || !meet(a, b))))
        expect(found).toEqual(chips.map(middle));
    }),
    { numRuns: runs(300) },
  );
});

it('the dimension of the face stays where it is, and the others keep clear of it', () => {
  const line = { from: { x: 0, y: 50 }, to: { x: 100, y: 50 }, axis: 'x', text: '41 1/2"' } as const;
  const [own, face] = placeChips(
    [
      { ...line, fixed: false },
      { ...line, fixed: true },
    ],
    [],
  );
  expect(face).toEqual({ x: 50, y: 50 });
  expect(own && face && meet(chipBox(line.text, own), chipBox(line.text, face))).toBe(false);
});
