import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intersect, regionOfRings, subtract, subtractApart, union } from '../../src/geometry/clip.ts';
import { areaOf, containsBox, regionOfBox } from '../../src/geometry/region.ts';
import type { Box, Region } from '../../src/geometry/shape.ts';

const box: fc.Arbitrary<Box> = fc.record({
  x: fc.integer({ min: -20, max: 120 }),
  y: fc.integer({ min: -20, max: 120 }),
  w: fc.integer({ min: 1, max: 40 }),
  h: fc.integer({ min: 1, max: 40 }),
});
/** Boxes, frames with a hole, and slanted triangles. */
const thing: fc.Arbitrary<Region> = fc.tuple(box, fc.nat(2)).map(([b, kind]) => {
  const whole = regionOfBox(b);
  if (kind === 1 && b.w > 4 && b.h > 4) {
    return subtract(whole, regionOfBox({ x: b.x + 1, y: b.y + 1, w: b.w - 2, h: b.h - 2 }));
  }
  if (kind === 0) return whole;
  const { x, y, w, h } = b;
  return regionOfRings(
    [
      [
        { x, y },
        { x: x + w, y },
        { x, y: y + h },
      ],
    ],
    'nonzero',
  );
});
const ground: fc.Arbitrary<Region> = fc.constantFrom(
  regionOfBox({ x: 0, y: 0, w: 100, h: 100 }),
  subtract(regionOfBox({ x: 0, y: 0, w: 100, h: 100 }), regionOfBox({ x: 30, y: 30, w: 40, h: 40 })),
  union([regionOfBox({ x: 0, y: 0, w: 45, h: 100 }), regionOfBox({ x: 55, y: 0, w: 45, h: 100 })]),
);

/** Of each property; more by hand. */
const RUNS = { numRuns: Number(process.env.SHOWFACE_RUNS ?? 60) };

describe('taking many things out of a large one', () => {
  it('leaves what taking them all at once leaves (twin: the polygon library on the whole)', () => {
    fc.assert(
      fc.property(ground, fc.array(thing, { maxLength: 12 }), (from, things) => {
        const taken = union(things);
        const apart = subtractApart(from, taken);
        const whole = subtract(from, taken);
        expect(areaOf(apart)).toBeCloseTo(areaOf(whole), 1);
        expect(areaOf(intersect(apart, whole))).toBeCloseTo(areaOf(whole), 1);
        // The grid of 1/10000 mm along a few meters of borders. Things that lie over one another are taken once.
        const heaped = things.flat();
        expect(areaOf(subtractApart(from, heaped))).toBeCloseTo(areaOf(whole), 1);
      }),
      RUNS,
    );
  });
});

it('a box that is said to lie inside does, clear of the border (twin: cut out by the polygon library)', () => {
  fc.assert(
    fc.property(ground, thing, box, (from, more, one) => {
      const region = union([from, more]);
      if (!containsBox(region, one)) return;
      expect(areaOf(intersect(region, regionOfBox(one)))).toBeCloseTo(one.w * one.h, 6);
    }),
    RUNS,
  );
});
