import fc from 'fast-check';
import { difference, intersection, union as joined } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { cropped, seenOfEach, union } from '../../src/geometry/clip.ts';
import { rotate } from '../../src/geometry/point.ts';
import { containsPointInRegion, nearTo, regionOfBox, transformRegion } from '../../src/geometry/region.ts';
import type { Box, Region } from '../../src/geometry/shape.ts';
import { areaOf, type Multi, multiOf } from '../shoelace.ts';

/** What is left aside because its box lies elsewhere changes nothing: areas of polyclip-ts, a clipper of its own, of all of it. */
const anyBox = fc.record({
  x: fc.integer({ min: 0, max: 90 }),
  y: fc.integer({ min: 0, max: 90 }),
  w: fc.integer({ min: 1, max: 60 }),
  h: fc.integer({ min: 1, max: 60 }),
});
const anyPiece = fc
  .record({ box: anyBox, angle: fc.constantFrom(0, 0, 0, 30, 45, 90) })
  .map(
    ({ box, angle }): Region => transformRegion(regionOfBox(box), (p) => rotate(p, angle, { x: 50, y: 50 })),
  );
const anyLaid = fc.array(anyPiece, { minLength: 1, maxLength: 9 });
/** Square millimeters by which two clippers may differ: both round corners, the one to 0.0001 mm. */
const ROUNDED = 0.05;

const all = (regions: readonly Region[]): Multi => {
  const [first, ...rest] = regions.map(multiOf);
  return first ? (joined(first, ...rest) as Multi) : [];
};
const areaOfMulti = (multi: Multi): number =>
  multi.reduce((sum, polygon) => {
    const [outer = [], ...holes] = polygon.map((ring) => ring.map(([x, y]) => ({ x, y })));
    return sum + areaOf([{ outer, holes }]);
  }, 0);
const close = (found: Region, expected: Multi) =>
  expect(Math.abs(areaOf(found) - areaOfMulti(expected))).toBeLessThan(ROUNDED);

describe('regions by what lies near', () => {
  it('crops to what lies in the box, with its holes', () => {
    fc.assert(
      fc.property(anyLaid, anyBox, (laid, box: Box) => {
        const region = union(laid);
        const expected = intersection(multiOf(region), multiOf(regionOfBox(box))) as Multi;
        close(cropped(region, box), expected);
      }),
      { numRuns: 200 },
    );
  });

  it('sees of each region what no later one covers', () => {
    fc.assert(
      fc.property(anyLaid, (laid) => {
        seenOfEach(laid).forEach((seen, i) => {
          const over = all(laid.slice(i + 1));
          const own = multiOf(laid[i] ?? []);
          close(seen, over.length === 0 ? own : (difference(own, over) as Multi));
        });
      }),
      { numRuns: 100 },
    );
  });

  it('keeps all that a place in one of the boxes may lie in', () => {
    fc.assert(
      fc.property(anyLaid, fc.array(anyBox, { minLength: 1, maxLength: 3 }), (laid, boxes) => {
        const region = union(laid);
        const near = nearTo(region, boxes);
        for (const { x, y, w, h } of boxes) {
          for (const [u, v] of [
            [0, 0],
            [1, 1],
            [0.31, 0.77],
            [0.5, 0.12],
            [0.93, 0.4],
          ] as const) {
            const place = { x: x + u * w, y: y + v * h };
            expect(containsPointInRegion(near, place)).toBe(containsPointInRegion(region, place));
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});
