import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenPath, quadraticToCubic, ringsOfPath } from '../../src/geometry/curve.ts';
import { archedLoop, ellipseRing } from '../../src/geometry/figures.ts';
import { ringOfLoop } from '../../src/geometry/loop.ts';
import {
  boxOfPath,
  circlePath,
  pathOfBox,
  pathOfPolyline,
  pathOfRegion,
  transformPath,
} from '../../src/geometry/path.ts';
import { distance } from '../../src/geometry/point.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import { boxOfPoints, signedArea } from '../../src/geometry/ring.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import type { Path, Point } from '../../src/geometry/shape.ts';
import { FLATNESS } from '../../src/geometry/tolerance.ts';

const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });

function cubic(p0: Point, h1: Point, h2: Point, p3: Point): Path {
  return [
    { op: 'M', ...p0 },
    { op: 'C', x1: h1.x, y1: h1.y, x2: h2.x, y2: h2.y, ...p3 },
  ];
}
function at(p: readonly [Point, Point, Point, Point], t: number): Point {
  const s = 1 - t;
  const mix = (a: number, b: number, c: number, d: number) =>
    s ** 3 * a + 3 * s * s * t * b + 3 * s * t * t * c + t ** 3 * d;
  return { x: mix(p[0].x, p[1].x, p[2].x, p[3].x), y: mix(p[0].y, p[1].y, p[2].y, p[3].y) };
}
const farFrom = (line: readonly Point[], q: Point) =>
  Math.min(...line.slice(1).map((b, i) => distanceToSegment(q, line[i] as Point, b)));

describe('flattening', () => {
  it('stays within the tolerance of every cubic', () => {
    const tolerances = fc.constantFrom(0.01, FLATNESS, 1);
    fc.assert(
      fc.property(point, point, point, point, tolerances, (a, b, c, d, tolerance) => {
        fc.pre(distance(a, d) > 1);
        const [contour] = flattenPath(cubic(a, b, c, d), tolerance);
        for (let i = 0; i <= 50; i++) {
          expect(farFrom(contour?.points ?? [], at([a, b, c, d], i / 50))).toBeLessThanOrEqual(
            tolerance + 1e-9,
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  it('tells closed contours from open ones, and goes on after a close', () => {
    const path: Path = [
      ...pathOfBox({ x: 0, y: 0, w: 10, h: 5 }),
      { op: 'L', x: -5, y: 0 },
      { op: 'M', x: 50, y: 50 },
    ];
    const contours = flattenPath(path);
    expect(contours.map((c) => [c.closed, c.points.length])).toEqual([
      [true, 4],
      [false, 2],
    ]);
    expect(contours[1]?.points[0]).toEqual({ x: 0, y: 0 });
    expect(ringsOfPath(path)).toHaveLength(1);
  });

  it('raises quadratics to the same curve', () => {
    fc.assert(
      fc.property(point, point, point, fc.double({ min: 0, max: 1, noNaN: true }), (a, h, b, t) => {
        const c = quadraticToCubic(a, h, b);
        if (c.op !== 'C') throw new Error('a cubic expected');
        const p = at([a, { x: c.x1, y: c.y1 }, { x: c.x2, y: c.y2 }, b], t);
        const s = 1 - t;
        expect(p.x).toBeCloseTo(s * s * a.x + 2 * s * t * h.x + t * t * b.x, 8);
        expect(p.y).toBeCloseTo(s * s * a.y + 2 * s * t * h.y + t * t * b.y, 8);
      }),
    );
  });
});

describe('arcs', () => {
  it('fills the box with an ellipse: area pi a b', () => {
    const box = { x: 3, y: -7, w: 600, h: 250 };
    const ring = ellipseRing(box, 0.001);
    expect(boxOfPoints(ring)).toEqual(box);
    expect(signedArea(ring)).toBeGreaterThan(0);
    expect(signedArea(ring) / (Math.PI * 300 * 125)).toBeCloseTo(1, 4);
  });

  it('arches the head of a box: rectangle plus circular segment', () => {
    const box = { x: 0, y: 0, w: 800, h: 1900 };
    const ring = ringOfLoop(archedLoop(box, 200), 0.001);
    expect(boxOfPoints(ring)).toEqual(box);
    // Radius from chord and rise: 800 and 200 give 500; segment area r2 (a - sin a) / 2 with sin(a/2) = 4/5.
    const a = 2 * Math.asin(0.8);
    const segment = (500 ** 2 * (a - Math.sin(a))) / 2;
    expect(signedArea(ring) / (800 * 1700 + segment)).toBeCloseTo(1, 6);
  });

  it('takes no rise as a rectangle and too much as a half circle', () => {
    const box = { x: 0, y: 0, w: 100, h: 300 };
    expect(ringOfLoop(archedLoop(box, 0))).toHaveLength(4);
    expect(signedArea(ringOfLoop(archedLoop(box, 90), 0.0001))).toBeCloseTo(
      100 * 250 + (Math.PI * 50 ** 2) / 2,
      0,
    );
  });
});

describe('paths', () => {
  it('draws a circle within 0.03% of its radius', () => {
    const [contour] = flattenPath(circlePath({ x: 5, y: 5 }, 100), 0.001);
    for (const p of contour?.points ?? []) {
      expect(Math.abs(distance(p, { x: 5, y: 5 }) - 100)).toBeLessThan(0.03);
    }
    expect(boxOfPath(circlePath({ x: 5, y: 5 }, 100))).toEqual({ x: -95, y: -95, w: 200, h: 200 });
  });

  it('boxes curves by where they turn back', () => {
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const box = boxOfPath(cubic(a, b, c, d));
        let most = Number.NEGATIVE_INFINITY;
        for (let i = 0; i <= 400; i++) most = Math.max(most, at([a, b, c, d], i / 400).x);
        expect(most).toBeLessThanOrEqual(box.x + box.w + 1e-6);
        expect(box.x + box.w).toBeLessThanOrEqual(most + 0.05);
      }),
    );
  });

  it('moves points and handles alike', () => {
    const moved = transformPath(circlePath({ x: 0, y: 0 }, 10), (p) => ({ x: 2 * p.x + 1, y: p.y }));
    const box = boxOfPath(moved);
    expect(box.w).toBeCloseTo(40, 9);
    expect(box.x).toBeCloseTo(-19, 9);
    expect(moved[moved.length - 1]).toEqual({ op: 'Z' });
  });

  it('draws regions ring by ring, lines open', () => {
    const path = pathOfRegion(regionOfBox({ x: 0, y: 0, w: 2, h: 1 }));
    expect(path.map((c) => c.op).join('')).toBe('MLLLZ');
    expect(
      pathOfPolyline([
        { x: 0, y: 0 },
        { x: 1, y: 1 },
      ]).map((c) => c.op),
    ).toEqual(['M', 'L']);
  });
});
