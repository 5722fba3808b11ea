import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../../src/design/defaults.ts';
import { shownFrom } from '../../../src/editor/document/shown.ts';
import { intersect } from '../../../src/geometry/clip.ts';
import { areaOf, regionOfBox } from '../../../src/geometry/region.ts';
import { carrierOf, LEAST_CARRIED } from '../../../src/layout/place/carrier.ts';

const box = fc.record({
  x: fc.integer({ min: 200, max: 700 }),
  y: fc.integer({ min: 200, max: 700 }),
  w: fc.integer({ min: 40, max: 400 }),
  h: fc.integer({ min: 40, max: 400 }),
});

describe('what carries a rectangle', () => {
  it('is what the polygon library cuts out of it most of, where no board lies under all of it', () => {
    fc.assert(
      fc.property(fc.array(box, { minLength: 1, maxLength: 6 }), box, (boxes, over) => {
        const parts = boxes.map((one, i) =>
          newPart('panel', {
            id: `p${i}`,
            name: `Panel ${i}`,
            box: one,
            stock: 'mdf-eighth',
            finish: 'trim',
          }),
        );
        const shown = shownFrom({ ...newDesign(), parts });
        const laid = shown.layout.parts;
        const own = newPart('panel', {
          id: 'own',
          name: 'Own',
          box: over,
          stock: 'mdf-eighth',
          finish: 'trim',
        });
        const shares = laid.map(({ part, region }) => ({
          part,
          share: areaOf(intersect(regionOfBox(over), region)) / (over.w * over.h),
        }));
        const most = Math.max(...shares.map(({ share }) => share));
        const found = carrierOf({ ...shown, parts: laid }, own, over, () => false);
        if (most < LEAST_CARRIED) expect(found).toHaveProperty('level');
        else {
          expect(found).toHaveProperty('part');
          const part = 'part' in found ? found.part : '';
          expect(shares.find((one) => one.part === part)?.share).toBeCloseTo(most, 3);
        }
      }),
      { numRuns: 200 },
    );
  });
});
