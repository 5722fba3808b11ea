import fc from 'fast-check';
import * as clip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { READINGS, spanOf } from '../../src/bed/measured.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import type { Point, Quad } from '../../src/geometry/shape.ts';
import type { Plan } from '../../src/plan/types.ts';
import { runs } from '../runs.ts';
import { areaOf, type Multi, ringOf, shoelace } from '../shoelace.ts';
import { planned, SUPPLIES } from './starters.ts';

const SKIN = { ...newDesign().bed, skin: { thickness: 6, material: 'plywood' } };
const { width: W, height: H } = faceOf(SKIN).face;
const stockOf = (id: string) => {
  const stock = SUPPLIES.tables.stocks.find((one) => one.id === id);
  if (!stock) throw new Error(`no ${id}`);
  return stock;
};
const TRIM = stockOf('pine-1x4');
const SHEET = stockOf('mdf-quarter');
if (TRIM.form !== 'flat' || SHEET.form !== 'sheet') throw new Error('other stock');
const [w, thick, thin] = [TRIM.width, TRIM.thickness, SHEET.thickness];

/** A mitered border around the face, and a panel that fills what is inside it. */
function design(quad: Quad): Design {
  const rim = Object.fromEntries(READINGS.map((one) => [one, spanOf(quad, one)]));
  const bed = { ...SKIN, measured: { rim, field: {}, keep: 'bottom', rise: 0, border: 'along' } } as const;
  const whole = { x: 0, y: 0, w: W, h: H };
  const inner = { x: w, y: w, w: W - 2 * w, h: H - 2 * w };
  const border = {
    ...newPart('run', { id: 'border', name: 'Border', stock: TRIM.id, box: whole, finish: 'trim' }),
    ...{ path: { form: 'frame' }, side: 'inside', corner: 'miter' },
  } as Part;
  const panel = newPart('panel', {
    ...{ id: 'panel', name: 'Panel', stock: SHEET.id, box: inner, finish: 'ground' },
  });
  const made = newDesign(bed);
  return { ...made, parts: [panel, border], pages: { ...made.pages, also: ['face'] } };
}

/** Where two lines cross, by Cramer's rule. */
function crossing([p, q]: readonly [Point, Point], [r, s]: readonly [Point, Point]): Point {
  const [a, b, c] = [q.y - p.y, p.x - q.x, (q.y - p.y) * p.x + (p.x - q.x) * p.y];
  const [d, e, f] = [s.y - r.y, r.x - s.x, (s.y - r.y) * r.x + (r.x - s.x) * r.y];
  const det = a * e - b * d;
  return { x: (c * e - b * f) / det, y: (a * f - c * d) / det };
}

/** The quadrilateral that a board of one width all around leaves, by lines beside its sides. */
function within(quad: Quad): Point[] {
  const sides = quad.map((p, i) => {
    const q = quad[(i + 1) % 4] as Point;
    const long = Math.hypot(q.x - p.x, q.y - p.y);
    const [ox, oy] = [(-(q.y - p.y) / long) * w, ((q.x - p.x) / long) * w];
    return [
      { x: p.x + ox, y: p.y + oy },
      { x: q.x + ox, y: q.y + oy },
    ] as const;
  });
  return sides.map((side, i) => crossing(sides[(i + 3) % 4] as (typeof sides)[number], side));
}

const around = (ring: readonly Point[]): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] as Point;
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);

/** Between two rings, by a second polygon library. */
const between = (outer: readonly Point[], inner: readonly Point[]): number =>
  (clip.difference([[ringOf(outer)]] as Multi, [[ringOf(inner)]] as Multi) as Multi).reduce(
    (sum, rings) =>
      sum + rings.reduce((one, ring) => one + shoelace(ring.slice(1).map(([x, y]) => ({ x, y }))), 0),
    0,
  );

const use = (plan: Plan, finish: string) => {
  const found = plan.finish.uses.find((one) => one.finish === finish);
  if (!found) throw new Error(`${finish} is not used`);
  return found;
};

/** In eighths of a millimeter, since what is off by less than the tool tells apart is true. */
const off = fc.integer({ min: -203, max: 203 }).map((n) => (n === 0 ? 1 : n) / 8);
/** Up to an inch out at each corner, the lower edge along x. */
const quads: fc.Arbitrary<Quad> = fc.tuple(off, off, off, off, off).map(([b, cx, cy, dx, dy]) => [
  { x: 0, y: 0 },
  { x: W + b, y: 0 },
  { x: W + cx, y: H + cy },
  { x: dx, y: H + dy },
]);

describe('a plan of a bed out of square', () => {
  it('paints, cuts, weighs, marks and prints what is really there', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const plan = planned(design(quad));
        const outer = plan.face.real?.[0]?.corners;
        if (!outer) throw new Error('it is true');
        const inner = within(outer);
        // The readings gave the corners back: each side as long as it was drawn.
        outer.forEach((p, i) => {
          const q = outer[(i + 1) % 4] as Point;
          const [a, b] = [quad[i] as Point, quad[(i + 1) % 4] as Point];
          expect(Math.hypot(q.x - p.x, q.y - p.y)).toBeCloseTo(Math.hypot(b.x - a.x, b.y - a.y), 3);
        });

        // Paint: faces by area between the rings, edges by their way around and the height that stands out.
        expect(use(plan, 'trim').face * 1e6).toBeCloseTo(between(outer, inner), 1);
        expect(use(plan, 'ground').face * 1e6).toBeCloseTo(shoelace(inner), 1);
        expect(use(plan, 'trim').edge * 1e6).toBeCloseTo(
          around(outer) * thick + around(inner) * (thick - thin),
          1,
        );

        // Cutting: every piece's area is its share of the border, and the boards that it is cut from are as long as it.
        const sides = plan.joinery.pieces.filter(({ part }) => part === 'border');
        expect(sides).toHaveLength(4);
        const wood = sides.reduce((sum, { outline }) => sum + Math.abs(shoelace(outline)), 0);
        expect(wood).toBeCloseTo(between(outer, inner), 1);
        const panel = plan.joinery.pieces.find(({ part }) => part === 'panel');
        expect(Math.abs(shoelace(panel?.outline ?? []))).toBeCloseTo(shoelace(inner), 1);
        for (const { cuts, length } of plan.cutting.boards)
          for (const { from, to, piece } of cuts) {
            const overall = plan.joinery.pieces.find(({ id }) => id === piece)?.overall ?? Number.NaN;
            expect(to - from).toBeCloseTo(overall, 6);
            expect(to).toBeLessThanOrEqual(length);
          }

        // Marks: what is farthest out of each, told from the datum lines.
        const marked = (axis: 'x' | 'y', part: string, edge: string) =>
          plan.marks.marks.find((m) => m.axis === axis && m.part === part && m.edge === edge)?.at;
        for (const axis of ['x', 'y'] as const) {
          const at = inner.map((p) => p[axis]);
          expect(marked(axis, 'panel', 'low')).toBeCloseTo(Math.min(...at), 2);
          expect(marked(axis, 'panel', 'high')).toBeCloseTo(Math.max(...at), 2);
        }
        // Where those lines are to be struck: a tape from a corner of the wood to the line, level or plumb.
        for (const { code, figures } of plan.checks)
          if (code === 'bed.datum') {
            const [low, high] = figures.axis === 'x' ? [outer[0].x, outer[3].x] : [outer[0].y, outer[1].y];
            expect(figures.low_mm).toBeCloseTo(-low, 6);
            expect(figures.high_mm).toBeCloseTo(-high, 6);
          }

        // Full size: laid beside each other, the pages have every corner of border and panel where it is.
        const set = plan.patterns.find((one) => one.for === 'face');
        if (!set) throw new Error('no pattern of the face');
        const xs = [0, ...outer.map(({ x }) => x)];
        const ys = [0, ...outer.map(({ y }) => y)];
        const from = { x: Math.min(...xs), y: Math.min(...ys) };
        expect(set.width).toBeCloseTo(Math.max(W, ...xs) - from.x, 4);
        expect(set.height).toBeCloseTo(Math.max(H, ...ys) - from.y, 4);
        for (const corner of [...outer, ...inner]) {
          const p = { x: corner.x - from.x, y: corner.y - from.y };
          const page = set.pages.find(
            ({ cell: c }) =>
              p.x >= c.x - 1e-6 && p.x <= c.x + c.w + 1e-6 && p.y >= c.y - 1e-6 && p.y <= c.y + c.h + 1e-6,
          );
          expect(page, 'a page that shows the corner').toBeDefined();
        }
      }),
      { numRuns: runs(4) },
    );
  });

  it('prints the corners of the border full size where they are, on the pages that show them', () => {
    const quad: Quad = [
      { x: 0, y: 0 },
      { x: W, y: 0 },
      { x: W + 25.4, y: H },
      { x: 25.4, y: H },
    ];
    const plan = planned(design(quad));
    const outer = plan.face.real?.[0]?.corners;
    const set = plan.patterns.find((one) => one.for === 'face');
    if (!outer || !set) throw new Error('it is true, or there is no pattern');
    // A parallelogram: an inch in all, by which the lower edge reaches out to the left.
    expect(set.width).toBeCloseTo(W + 25.4, 3);
    expect(areaOf([{ outer, holes: [] }])).toBeCloseTo(W * H, 0);
    const left = Math.min(...outer.map(({ x }) => x));
    // Of every page: what it draws, laid by its margins where its window lies on the pattern.
    const drawn = set.pages.flatMap((page) =>
      flatten(page.drawing.items).paths.flatMap(({ path }) =>
        ringsOfPath(path).flatMap((ring) => ring.map((p) => ({ page, p }))),
      ),
    );
    const { left: edge, bottom } = plan.design.pages.margin;
    for (const corner of outer) {
      const meant = { x: corner.x - left, y: corner.y };
      const shown = set.pages.filter(
        ({ window: v }) =>
          meant.x > v.x + 1 && meant.x < v.x + v.w - 1 && meant.y > v.y + 1 && meant.y < v.y + v.h - 1,
      );
      for (const page of shown) {
        const off = drawn
          .filter((one) => one.page === page)
          .map(({ p }) =>
            Math.hypot(p.x - edge + page.window.x - meant.x, p.y - bottom + page.window.y - meant.y),
          );
        expect(Math.min(...off)).toBeLessThan(0.01);
      }
    }
  });
});
