import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toFace, toScreen } from '../../src/editor/state/store.ts';
import { fittedView, zoomedAt } from '../../src/editor/state/zoom.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const view = fc.record({ scale: number(0.05, 10), x: number(-2000, 2000), y: number(-2000, 2000) });
const pixel = fc.record({ x: number(0, 2000), y: number(0, 1200) });

describe('the view of the drawing', () => {
  it('keeps the point of the face under the pointer while zooming', () => {
    fc.assert(
      fc.property(view, pixel, number(0.1, 10), (v, px, factor) => {
        const before = toFace(v, px);
        const after = toFace(zoomedAt(v, px, factor), px);
        expect(after.x).toBeCloseTo(before.x, 6);
        expect(after.y).toBeCloseTo(before.y, 6);
      }),
    );
  });

  it('shows a fitted box whole, between its margins', () => {
    const margin = { left: 60, right: 84, top: 112, bottom: 64 };
    fc.assert(
      fc.property(
        number(200, 3000),
        number(200, 3000),
        number(400, 2600),
        number(400, 1600),
        (w, h, width, height) => {
          const v = fittedView({ x: 0, y: 0, w, h }, width, height, margin);
          const low = toScreen(v, { x: 0, y: 0 });
          const high = toScreen(v, { x: w, y: h });
          expect(low.x).toBeGreaterThanOrEqual(margin.left - 1e-6);
          expect(high.x).toBeLessThanOrEqual(width - margin.right + 1e-6);
          expect(high.y).toBeGreaterThanOrEqual(margin.top - 1e-6);
          expect(low.y).toBeLessThanOrEqual(height - margin.bottom + 1e-6);
        },
      ),
    );
  });
});
