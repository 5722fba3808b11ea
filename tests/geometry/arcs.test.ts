import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withArcs } from '../../src/geometry/arcs.ts';
import { regionOfRings, subtract } from '../../src/geometry/clip.ts';
import { archedLoop, ellipseRing, quatrefoilLoop, regularLoop } from '../../src/geometry/figures.ts';
import { ringOfLoop } from '../../src/geometry/loop.ts';
import { regionOfBox, regionOfRing, ringsOf } from '../../src/geometry/region.ts';
import { figuresOf } from './bows.ts';

describe('arcs of an outline', () => {
  it('tells a circle by its true area and way around', () => {
    const round = figuresOf(withArcs(ellipseRing({ x: 5, y: 7, w: 300, h: 300 }), true));
    expect(round.arcs).toBeLessThanOrEqual(3);
    expect(round.length).toBeCloseTo(Math.PI * 300, 4);
    expect(round.area).toBeCloseTo(Math.PI * 150 * 150, 2);
  });

  it('tells heads of any size as one arc, also after they were cut on the grid', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 2000, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (w, share) => {
          const rise = (w / 2) * share;
          const box = { x: 3, y: 4, w, h: rise + 50 };
          // Building Trades Pocketbook (ICS): radius from chord and rise, (c2 + 4 r2) / 8 r.
          const radius = (w * w + 4 * rise * rise) / (8 * rise);
          const angle = 4 * Math.atan2(2 * rise, w);
          const length = radius * angle + w + 100;
          const area = w * 50 + (radius * radius * (angle - Math.sin(angle))) / 2;
          for (const ring of [
            ringOfLoop(archedLoop(box, rise)),
            ...ringsOf(regionOfRings([ringOfLoop(archedLoop(box, rise))], 'nonzero')),
          ]) {
            const found = figuresOf(withArcs(ring, true));
            expect(found.arcs).toBeLessThanOrEqual(2);
            expect(Math.abs(found.length - length)).toBeLessThan(0.02);
            expect(Math.abs(found.area / area - 1)).toBeLessThan(1e-5);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('finds the arcs of a hole, and those that a cut left over', () => {
    const region = subtract(
      subtract(
        regionOfBox({ x: 0, y: 0, w: 400, h: 300 }),
        regionOfRing(ellipseRing({ x: 50, y: 50, w: 100, h: 100 })),
      ),
      regionOfRing(ellipseRing({ x: 300, y: -100, w: 200, h: 200 })),
    );
    const all = ringsOf(region).map((ring) => figuresOf(withArcs(ring, true)));
    const area = all.reduce((sum, f) => sum + f.area, 0);
    // A circle of 50, and a quarter of one of 100.
    expect(area).toBeCloseTo(400 * 300 - Math.PI * 2500 - (Math.PI * 10_000) / 4, 0);
    expect(all.every((f) => f.arcs >= 1 && f.arcs <= 3)).toBe(true);
  });

  it('leaves alone what was drawn with corners: an octagon, a 24-gon, an arch of boards', () => {
    for (const sides of [8, 12, 24]) {
      const ring = ringOfLoop(regularLoop({ x: 0, y: 0, w: 600, h: 600 }, sides));
      expect(figuresOf(withArcs(ring, true))).toMatchObject({ arcs: 0 });
      expect(withArcs(ring, true)).toHaveLength(sides);
    }
  });

  it('tells lobes that turn into each other apart', () => {
    const found = figuresOf(withArcs(ringOfLoop(quatrefoilLoop({ x: 0, y: 0, w: 400, h: 400 })), true));
    expect(found.arcs).toBe(4);
    // Four half circles about a square.
    expect(found.area).toBeCloseTo(200 * 200 + 2 * Math.PI * 100 * 100, 1);
    expect(found.length).toBeCloseTo(4 * Math.PI * 100, 2);
  });
});
