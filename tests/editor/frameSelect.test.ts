import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { framed } from '../../src/editor/gesture/frameSelect.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { runs } from '../runs.ts';
import { layoutOf } from './laid.ts';

const plain = newDesign();
const withBoxes = (boxes: readonly Box[]): Design => ({
  ...plain,
  parts: boxes.map((box, i) => newPart('panel', { id: `p${i}`, name: `P ${i}`, box })),
});

describe('a frame', () => {
  it('takes what lies inside when pulled to the right, and what it touches when pulled to the left', () => {
    const length = fc.integer({ min: 1, max: 400 });
    const place = fc.integer({ min: 0, max: 800 });
    const box = fc.record({ x: place, y: place, w: length, h: length });
    fc.assert(
      fc.property(fc.array(box, { maxLength: 6 }), box, fc.boolean(), (boxes, f, fromTop) => {
        const layout = layoutOf(withBoxes(boxes));
        const [low, high] = fromTop ? [f.y + f.h, f.y] : [f.y, f.y + f.h];
        const right = framed(layout, { x: f.x, y: low }, { x: f.x + f.w, y: high });
        const left = framed(layout, { x: f.x + f.w, y: low }, { x: f.x, y: high });
        // Millimeters are whole: what two boxes share is counted in them.
        const shared = (b: Box) =>
          Math.max(0, Math.min(b.x + b.w, f.x + f.w) - Math.max(b.x, f.x)) *
          Math.max(0, Math.min(b.y + b.h, f.y + f.h) - Math.max(b.y, f.y));
        const ids = (is: (b: Box) => boolean) => boxes.flatMap((b, i) => (is(b) ? [`p${i}`] : []));
        expect([...right].sort()).toEqual(ids((b) => shared(b) === b.w * b.h));
        expect([...left].sort()).toEqual(ids((b) => shared(b) > 0));
      }),
      { numRuns: runs(150) },
    );
  });

  it('does not touch a border by its opening', () => {
    const border = newPart('run', { id: 'border', name: 'Border', box: { x: 100, y: 100, w: 600, h: 900 } });
    const layout = layoutOf({ ...plain, parts: [border] });
    expect(framed(layout, { x: 500, y: 300 }, { x: 300, y: 500 })).toEqual([]);
    expect(framed(layout, { x: 500, y: 300 }, { x: 101, y: 500 })).toEqual(['border']);
  });
});
