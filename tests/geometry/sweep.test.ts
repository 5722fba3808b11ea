import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { subtract, subtractedArea, union } from '../../src/geometry/clip.ts';
import { areaOf, regionOfBox, translateRegion } from '../../src/geometry/region.ts';
import { sweep } from '../../src/geometry/sweep.ts';
import { letter } from '../../src/lettering/letter.ts';
import { fontOf } from '../lettering/fonts.ts';
import { lettering } from '../lettering/lettering.ts';
import { runs } from '../runs.ts';

const ORIGIN = { x: 0, y: 0 };
const box = (x: number, y: number, w: number, h: number) => regionOfBox({ x, y, w, h });
const frame = subtract(box(0, 0, 100, 100), box(30, 30, 40, 40));
const glyphOf = (character: string) =>
  letter({ lettering: lettering(character), font: fontOf('lato'), sign: { id: 'board', w: 900, h: 300 } })
    .lettered.glyphs[0]?.region ?? [];

describe('sweep', () => {
  it('of a square of 10 along (30, 40) covers 100 + 50 x 14', () => {
    // Area and width upright to the vector: (10 x 40 + 10 x 30) / 50 = 14.
    expect(areaOf(sweep(box(0, 0, 10, 10), ORIGIN, { x: 30, y: 40 }))).toBeCloseTo(100 + 50 * 14, 3);
    expect(areaOf(sweep(box(0, 0, 10, 10), ORIGIN, { x: 0, y: 25 }))).toBeCloseTo(350, 6);
  });

  it('by nothing is the region', () => {
    expect(sweep(frame, ORIGIN, ORIGIN)).toEqual(union([frame]));
  });

  it('keeps a hole as far as the way is shorter than the hole', () => {
    expect(areaOf(sweep(frame, ORIGIN, { x: 10, y: 0 }))).toBeCloseTo(110 * 100 - 30 * 40, 6);
    expect(areaOf(sweep(frame, ORIGIN, { x: 50, y: 0 }))).toBeCloseTo(150 * 100, 6);
  });

  it('covers every place on the way', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -80, max: 80 }),
        fc.integer({ min: -80, max: 80 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (dx, dy, t) => {
          const swept = sweep(frame, ORIGIN, { x: dx, y: dy });
          expect(subtractedArea(translateRegion(frame, dx * t, dy * t), swept)).toBeLessThan(0.1);
        },
      ),
    );
  });

  it('of a letter covers what many steps along the way cover, and no more (twin: copies)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('8', 'A', 'S', 'g', '&'),
        fc.integer({ min: -180, max: 180 }),
        fc.integer({ min: 1, max: 60 }),
        (character, angle, distance) => {
          const region = glyphOf(character);
          const by = {
            x: distance * Math.cos((angle * Math.PI) / 180),
            y: distance * Math.sin((angle * Math.PI) / 180),
          };
          const swept = sweep(region, ORIGIN, by);
          const steps = 40;
          const copies = union(
            Array.from({ length: steps + 1 }, (_, i) =>
              translateRegion(region, (by.x * i) / steps, (by.y * i) / steps),
            ),
          );
          expect(subtractedArea(copies, swept)).toBeLessThan(0.02);
          // Between two copies a border sweeps at most its length times half a step beyond them.
          expect(areaOf(swept) - areaOf(copies)).toBeLessThan((1200 * distance) / steps / 2);
        },
      ),
      { numRuns: runs(8) },
    );
  });
});
