import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { OutlineCorner } from '../../src/design/schema.ts';
import { subtract } from '../../src/geometry/clip.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import { ringOfLoop } from '../../src/geometry/loop.ts';
import { regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import type { Path, Region } from '../../src/geometry/shape.ts';
import { trueAreaOf } from '../../src/geometry/trueArea.ts';
import { truePathOfRegion } from '../../src/geometry/truePath.ts';
import { loopOfDrawn } from '../../src/layout/place/drawn.ts';
import { regionOfShape } from '../../src/layout/place/shape.ts';
import { svgOf } from '../../src/output/svg/svg.ts';
import { runs } from '../runs.ts';
import { shoelace } from '../shoelace.ts';

/** Area inside of a path, its curves in a thousand chords each. */
const areaOf = (path: Path): number => ringsOfPath(path, 1e-6).reduce((sum, ring) => sum + shoelace(ring), 0);
const opsOf = (path: Path): string => path.map(({ op }) => op).join('');
const written = (region: Region): string =>
  svgOf({
    ...{ width: 900, height: 900, title: 'x' },
    items: [{ kind: 'path', path: truePathOfRegion(region), stroke: '#000000', width: 0.1 }],
  });

describe('borders with their curves', () => {
  it('are cubics around an ellipse, within a tenth of a micron of it: (x/a)² + (y/b)² = 1, area π a b', () => {
    const path = truePathOfRegion(regionOfShape({ form: 'round' }, { x: 100, y: 200, w: 600, h: 360 }));
    expect(opsOf(path)).toMatch(/^MC+Z$/);
    expect(path.length).toBeLessThan(20);
    for (const ring of ringsOfPath(path, 1e-6))
      for (const { x, y } of ring)
        expect(Math.abs(Math.hypot((x - 400) / 300, (y - 380) / 180) - 1) * 180).toBeLessThan(1e-4);
    expect(areaOf(path)).toBeCloseTo(Math.PI * 300 * 180, 0);
  });

  it('keep what a saw cuts off straight, and the rest of the curve true', () => {
    const whole = regionOfShape({ form: 'round' }, { x: 100, y: 200, w: 600, h: 360 });
    const half = subtract(whole, regionOfBox({ x: 0, y: 0, w: 400, h: 900 }));
    const path = truePathOfRegion(half);
    // A chord that is cut stays straight: it strays by what the chords stray everywhere else.
    expect(opsOf(path)).toMatch(/^M[LC]+Z$/);
    expect(path.filter(({ op }) => op === 'C').length).toBeGreaterThan(3);
    expect(Math.abs(areaOf(path) - (Math.PI * 300 * 180) / 2)).toBeLessThan(2);
    expect(Math.abs(areaOf(path) - trueAreaOf(half))).toBeLessThan(2);
  });

  it('take in the true area of any drawn outline, and SVG has one curve for each smooth side', () => {
    const side = fc.record({
      at: fc.double({ min: -0.12, max: 0.12, noNaN: true }),
      smooth: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(side, { minLength: 3, maxLength: 7 }), (sides) => {
        const points = sides.map(({ at, smooth }, i): OutlineCorner => {
          const a = (2 * Math.PI * i) / sides.length + at;
          const place = { u: 0.5 + 0.45 * Math.cos(a), v: 0.5 + 0.45 * Math.sin(a) };
          return smooth ? { ...place, side: { as: 'smooth' } } : place;
        });
        const region = regionOfRing(ringOfLoop(loopOfDrawn(points, { x: 100, y: 100, w: 700, h: 500 })));
        const path = truePathOfRegion(region);
        const area = trueAreaOf(region);
        expect(Math.abs(areaOf(path) - area)).toBeLessThan(4e-6 * area);
        const smooth = sides.filter((one) => one.smooth).length;
        expect(path.filter(({ op }) => op === 'C')).toHaveLength(smooth);
        const curves = written(region).match(/C[-\d. ]+/g) ?? [];
        expect(curves).toHaveLength(smooth);
      }),
      { numRuns: runs(100) },
    );
  });

  it('leave circles to be told as arcs, beside cubics too', () => {
    const circle = regionOfShape({ form: 'round' }, { x: 100, y: 100, w: 400, h: 400 });
    expect(opsOf(truePathOfRegion(circle))).toMatch(/^ML+Z$/);
    // A smooth side between an arc and straight ones.
    const points: OutlineCorner[] = [
      { u: 0, v: 0 },
      { u: 1, v: 0, side: { as: 'rise', rise: 90 } },
      { u: 1, v: 1, side: { as: 'smooth' } },
      { u: 0, v: 1 },
    ];
    const svg = written(regionOfRing(ringOfLoop(loopOfDrawn(points, { x: 100, y: 100, w: 600, h: 500 }))));
    const [, data] = /<path d="([^"]+)"/.exec(svg) ?? [];
    expect(data?.replace(/[-\d. ]/g, '')).toMatch(/^M(?=[LAC]*A)(?=[LAC]*C)[LAC]{2,4}Z$/);
  });
});
