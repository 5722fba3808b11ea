import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../src/geometry/clip.ts';
import { type DrawnCorner, drawnLoop } from '../../src/geometry/drawn.ts';
import { archedLoop, ellipseLoop } from '../../src/geometry/figures.ts';
import { areaOfLoop, boxOfLoop, type Loop, lengthOfLoop, ringOfLoop } from '../../src/geometry/loop.ts';
import { distance } from '../../src/geometry/point.ts';
import { regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import type { Point } from '../../src/geometry/shape.ts';
import {
  type Arc,
  arcOver,
  lengthOf,
  pointAt,
  riseThrough,
  type Stretch,
} from '../../src/geometry/stretch.ts';
import { trueAreaOf } from '../../src/geometry/trueArea.ts';
import { runs } from '../runs.ts';

/** Relative. */
const NEAR = 1e-9;
const near = (found: number, asked: number) => expect(Math.abs(found / asked - 1)).toBeLessThan(NEAR);

/** Radius from chord and rise, (c2 + 4 r2) / 8 r (Building Trades Pocketbook, ICS: Mensuration); segment (R2 / 2)(a - sin a). */
function segment(chord: number, rise: number) {
  const radius = (chord ** 2 + 4 * rise ** 2) / (8 * rise);
  const angle = 4 * Math.atan((2 * rise) / chord);
  return { area: (radius ** 2 / 2) * (angle - Math.sin(angle)), arc: radius * angle };
}

/** Perimeter of an ellipse by the arithmetic-geometric mean (Gauss; Abramowitz and Stegun, 17.6). */
function ellipsePerimeter(a0: number, b0: number): number {
  let [a, b] = [Math.max(a0, b0), Math.min(a0, b0)];
  let sum = (a * a - b * b) / 2;
  const first = a * a;
  for (let power = 1; a - b > 1e-15 * a; power *= 2) {
    const c = (a - b) / 2;
    [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
    sum += power * c * c;
  }
  return ((2 * Math.PI) / a) * (first - sum);
}

/** Area and length by very many straight steps, each twice as fine, and their limit (Richardson). It knows points alone. */
function walked(loop: Loop) {
  const of = (steps: number) => {
    const points = loop.flatMap((s) => Array.from({ length: steps }, (_, i) => pointAt(s, i / steps)));
    let [area, length] = [0, 0];
    points.forEach((p, i) => {
      const q = points[(i + 1) % points.length] as Point;
      const o = points[0] as Point;
      area += ((p.x - o.x) * (q.y - o.y) - (q.x - o.x) * (p.y - o.y)) / 2;
      length += distance(p, q);
    });
    return { area, length };
  };
  const [coarse, fine] = [of(400), of(800)];
  const limit = (a: number, b: number) => b + (b - a) / 3;
  return { area: limit(coarse.area, fine.area), length: limit(coarse.length, fine.length) };
}

const size = fc.double({ min: 20, max: 900, noNaN: true });
const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });

/** Outlines around a middle: any sides, any corners. */
const corners = fc
  .array(
    fc.record({
      far: fc.double({ min: 150, max: 400, noNaN: true }),
      side: fc.oneof(
        fc.constant(undefined),
        fc.record({ as: fc.constant('rise' as const), rise: fc.double({ min: -40, max: 60, noNaN: true }) }),
        fc.record({
          as: fc.constant('radius' as const),
          radius: fc.double({ min: 300, max: 900, noNaN: true }),
        }),
        fc.constant({ as: 'smooth' as const }),
      ),
      cut: fc.option(
        fc.record({
          how: fc.constantFrom('rounded' as const, 'coved' as const, 'clipped' as const, 'stepped' as const),
          size: fc.double({ min: 1, max: 60, noNaN: true }),
        }),
        { nil: undefined },
      ),
    }),
    { minLength: 3, maxLength: 9 },
  )
  .map((all) =>
    all.map(({ far, ...rest }, i): DrawnCorner => {
      const a = (2 * Math.PI * i) / all.length;
      return { at: { x: 500 + far * Math.cos(a), y: 500 + far * Math.sin(a) }, ...rest };
    }),
  );

describe('outlines of lines, arcs and curves', () => {
  it('has the area and length of an arched head by the formulas of the circle', () => {
    fc.assert(
      fc.property(size, share, (w, part) => {
        const rise = (w / 2) * part;
        const loop = archedLoop({ x: 3, y: 7, w, h: 1000 }, rise);
        const { area, arc } = segment(w, rise);
        near(areaOfLoop(loop), w * (1000 - rise) + area);
        near(lengthOfLoop(loop), w + 2 * (1000 - rise) + arc);
      }),
      { numRuns: runs(200) },
    );
  });

  it('has the area of an ellipse, and its perimeter by the arithmetic-geometric mean', () => {
    fc.assert(
      fc.property(size, size, (w, h) => {
        const loop = ellipseLoop({ x: -40, y: 90, w, h });
        near(areaOfLoop(loop), (Math.PI * w * h) / 4);
        near(lengthOfLoop(loop), ellipsePerimeter(w / 2, h / 2));
        // Its polygon, whose corners tell the curve, is as large.
        const region = regionOfRing(ringOfLoop(loop));
        near(trueAreaOf(region), (Math.PI * w * h) / 4);
      }),
      { numRuns: runs(60) },
    );
  });

  it('takes as much off a corner where a handle lies on it', () => {
    const [side, size] = [300, 40];
    // A quarter of a circle, a triangle and a square of the size (Building Trades Pocketbook: Mensuration).
    const off = {
      rounded: (1 - Math.PI / 4) * size ** 2,
      coved: (Math.PI / 4) * size ** 2,
      clipped: size ** 2 / 2,
      stepped: size ** 2,
    };
    const at = (x: number, y: number): Point => ({ x, y });
    // On the straight line all of them, on the corner, near it, or on both ends.
    for (const [from, to] of [
      [0, 250],
      [1, 250],
      [0, side],
      [60, side],
    ] as const)
      for (const [how, less] of Object.entries(off) as [keyof typeof off, number][]) {
        const smooth = { as: 'smooth', handles: [at(from, 0), at(to, 0)] } as const;
        const corners: DrawnCorner[] = [
          { at: at(0, 0), side: smooth, cut: { how, size } },
          { at: at(side, 0), cut: { how, size } },
          { at: at(side, side) },
          { at: at(0, side) },
        ];
        near(areaOfLoop(drawnLoop(corners)), side ** 2 - 2 * less);
      }
  });

  it('is as long as its ways there and back where its handles turn it back on itself', () => {
    const [a, h1, h2, b] = [0, 400, -100, 300].map((x) => ({ x, y: 0 })) as [Point, Point, Point, Point];
    // Bernstein's form of these four: x = 1800 t3 - 2700 t2 + 1200 t, which turns at 1/3 and 2/3, at 500/3 and 400/3.
    const there = 500 / 3;
    const back = 500 / 3 - 400 / 3;
    for (const deg of [0, 17, 90]) {
      const on = ({ x }: Point) => ({
        x: x * Math.cos((deg * Math.PI) / 180),
        y: x * Math.sin((deg * Math.PI) / 180),
      });
      near(lengthOf({ kind: 'cubic', from: on(a), h1: on(h1), h2: on(h2), to: on(b) }), 2 * there + back);
    }
  });

  it('agrees with a walk in very many steps, whatever its sides and corners are', () => {
    fc.assert(
      fc.property(corners, (drawn) => {
        const loop = drawnLoop(drawn);
        // Each stretch begins where the one before it ends.
        loop.forEach((stretch, i) => {
          expect(distance(stretch.to, (loop[(i + 1) % loop.length] as Stretch).from)).toBeLessThan(1e-6);
        });
        const { area, length } = walked(loop);
        expect(Math.abs(areaOfLoop(loop) - area)).toBeLessThan(1e-9 * length * length);
        expect(Math.abs(lengthOfLoop(loop) - length)).toBeLessThan(1e-8 * length);
        const { x, y, w, h } = boxOfLoop(loop);
        for (const p of loop.flatMap((s) => [0, 0.3, 0.6].map((t) => pointAt(s, t)))) {
          expect(Math.min(p.x - x, p.y - y, x + w - p.x, y + h - p.y)).toBeGreaterThan(-1e-7);
        }
      }),
      { numRuns: runs(40) },
    );
  });

  it('bows a side through any third point', () => {
    fc.assert(
      fc.property(size, fc.double({ min: -3, max: 3, noNaN: true }), share, (c, turn, at) => {
        const to = { x: 10 + c * Math.cos(turn), y: 20 + c * Math.sin(turn) };
        const from = { x: 10, y: 20 };
        const arc = arcOver(from, to, c * (at - 0.5));
        if (arc.kind === 'line') return;
        const again = riseThrough(from, pointAt(arc, at), to);
        expect(again).toBeCloseTo(c * (at - 0.5), 6);
      }),
      { numRuns: runs(200) },
    );
  });
});

describe('corners of an outline', () => {
  const gable = (turn: number, radius: number): DrawnCorner[] => [
    { at: { x: 0, y: 0 } },
    { at: { x: 400, y: 0 }, cut: { how: 'rounded', size: radius } },
    { at: { x: 400 + 400 * Math.cos(turn), y: 400 * Math.sin(turn) } },
  ];

  it('takes off radius times the tangent of half the turn at a rounded corner', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 2.6, noNaN: true }), share, (turn, part) => {
        const room = 400 / Math.tan(turn / 2);
        const radius = room * part;
        const arc = drawnLoop(gable(turn, radius)).find((s): s is Arc => s.kind === 'arc');
        const back = radius * Math.tan(turn / 2);
        expect(arc?.from.x).toBeCloseTo(400 - back, 6);
        expect(arc?.rx).toBeCloseTo(radius, 6);
        expect(arc?.sweep).toBeCloseTo((turn * 180) / Math.PI, 6);
      }),
      { numRuns: runs(100) },
    );
  });

  it('rounds the corner of an arc and a straight side by a circle that touches both', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 190, noNaN: true }),
        fc.double({ min: 1, max: 40, noNaN: true }),
        (rise, size) => {
          const [a, b, c, d] = [
            { x: 0, y: 0 },
            { x: 400, y: 0 },
            { x: 400, y: 500 },
            { x: 0, y: 500 },
          ];
          const side = { as: 'rise' as const, rise };
          const loop = drawnLoop([
            { at: a },
            { at: b },
            { at: c, side, cut: { how: 'rounded', size } },
            { at: d },
          ]);
          const arcs = loop.filter((s): s is Arc => s.kind === 'arc');
          const [corner, head] = arcs;
          if (!corner || !head) throw new Error('two arcs expected');
          // Tangent circles: centers R - r apart, and the straight side r away.
          expect(distance(corner.center, head.center)).toBeCloseTo(head.rx - corner.rx, 5);
          expect(400 - corner.center.x).toBeCloseTo(corner.rx, 5);
          expect(head.rx).toBeCloseTo((400 ** 2 + 4 * rise ** 2) / (8 * rise), 6);
        },
      ),
      { numRuns: runs(100) },
    );
  });

  it('brings corners that have no room together down until they have', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 100 },
      { x: 0, y: 100 },
    ].map((at): DrawnCorner => ({ at, cut: { how: 'rounded', size: 80 } }));
    near(areaOfLoop(drawnLoop(square)), Math.PI * 2500);
  });
});

describe('areas of what was cut out of curves', () => {
  it('is that of the circle where a straight cut crosses it, by the segment formula', () => {
    fc.assert(
      fc.property(fc.double({ min: 60, max: 900, noNaN: true }), share, (d, part) => {
        const disc = regionOfRing(ringOfLoop(ellipseLoop({ x: 0, y: 0, w: d, h: d })));
        const cut = d * part;
        const low = intersect(disc, regionOfBox({ x: -1, y: -1, w: d + 2, h: cut + 1 }));
        const high = subtract(disc, regionOfBox({ x: -1, y: -1, w: d + 2, h: cut + 1 }));
        const chord = 2 * Math.sqrt(cut * (d - cut));
        const small = segment(chord, Math.min(cut, d - cut)).area;
        const asked = cut < d / 2 ? small : (Math.PI * d * d) / 4 - small;
        // The grid of the clipper, 1/10000 mm, along the cut.
        expect(Math.abs(trueAreaOf(low) - asked)).toBeLessThan(2e-3 * chord);
        expect(Math.abs(trueAreaOf(low) + trueAreaOf(high) - (Math.PI * d * d) / 4)).toBeLessThan(
          2e-3 * chord,
        );
      }),
      { numRuns: runs(60) },
    );
  });

  it('leaves to a board what a round hole leaves of it', () => {
    const hole = regionOfRing(ringOfLoop(ellipseLoop({ x: 50.03, y: 60.07, w: 211.3, h: 143.9 })));
    const board = subtract(regionOfBox({ x: 0, y: 0, w: 400, h: 300 }), hole);
    near(trueAreaOf(board), 400 * 300 - (Math.PI * 211.3 * 143.9) / 4);
  });
});
