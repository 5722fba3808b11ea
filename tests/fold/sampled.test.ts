import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bed } from '../../src/bed/bed.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import { bodiesOf, cornersOf, type FoldInput } from '../../src/fold/body.ts';
import { planFold } from '../../src/fold/planFold.ts';
import { sideView } from '../../src/fold/sideView.ts';
import { wallBoardBound, wallBoardClear } from '../../src/fold/wallBoard.ts';
import { boxOf, regionOfBox } from '../../src/geometry/region.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { sampleBed } from '../bed/sample.ts';
import { blockInInches } from '../bed/solids.ts';
import { runs } from '../runs.ts';

/*
 * The closed forms beside a plain sweep that only turns every corner and looks: 100,000 angles a design.
 */
const ANGLES = 100_000;
const STEP = 90 / (ANGLES - 1);
const sines = Float64Array.from({ length: ANGLES }, (_, i) => Math.sin((i * STEP * Math.PI) / 180));
const cosines = Float64Array.from({ length: ANGLES }, (_, i) => Math.cos((i * STEP * Math.PI) / 180));

/** Spread evenly over the range; doubles would crowd around zero. */
const between = (min: number, max: number) =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);

/** Beds and parts that hit about as often as they clear. */
const design = fc
  .record({
    height: between(8, 30),
    fromFace: between(-2, 8),
    fromWall: between(4, 25),
    aboveEdge: between(-3, 14),
    ceiling: between(84, 110),
    boardThick: between(0, 8),
    boardHigh: between(0, 25),
    lying: fc.boolean(),
    blocks: fc.array(
      fc.record({ y: between(-15, 75), h: between(0.5, 20), z: between(-10, 2), t: between(0.1, 8) }),
      { minLength: 1, maxLength: 3 },
    ),
  })
  .map((d): FoldInput => {
    const bed: Bed = sampleBed({
      pivotAlong: d.lying ? 'side' : 'end',
      pivot: {
        height: d.height * 25.4,
        fromFace: d.fromFace * 25.4,
        fromWall: d.fromWall * 25.4,
        aboveEdge: d.aboveEdge * 25.4,
      },
      ceiling: d.ceiling * 25.4,
      wallBoard: { thickness: d.boardThick * 25.4, height: d.boardHigh * 25.4 },
    });
    const solids = d.blocks.map((b, i) => blockInInches(`part${i}`, [0, b.y, 30, b.h], [b.z, b.z + b.t]));
    return { bed, face: faceOf(bed).face, keepClears: [], solids };
  });

/** Least of a value over every corner and every sampled angle. */
function sampledLeast(
  arms: readonly { up: number; out: number }[],
  value: (x: number, y: number) => number,
): { value: number; firstBelow: number | null } {
  let least = Infinity;
  let first: number | null = null;
  for (let i = 0; i < ANGLES; i++) {
    const s = sines[i] ?? 0;
    const c = cosines[i] ?? 0;
    for (const { up, out } of arms) {
      const v = value(up * s + out * c, up * c - out * s);
      if (v < least) least = v;
      if (v < -1e-4 && first === null) first = i * STEP;
    }
  }
  return { value: least, firstBelow: first };
}

describe('closed forms against a sampled sweep', () => {
  it('never optimistic, and within 0.01 mm', () => {
    fc.assert(
      fc.property(design, (input) => {
        const { bed } = input;
        const fold = planFold(input);
        const bodies = bodiesOf(input);
        const all = bodies.flatMap((b) => cornersOf(bed, b));
        const raised = bodies.filter((b) => b.kind !== 'leg').flatMap((b) => cornersOf(bed, b));
        const twins: [number, number][] = [
          [fold.floorClear, sampledLeast(raised, (_, y) => bed.pivot.height + y).value],
          [fold.wallClear, sampledLeast(all, (x) => bed.pivot.fromWall + x).value],
          [fold.ceilingClear, sampledLeast(all, (_, y) => bed.ceiling - bed.pivot.height - y).value],
          [-fold.floorSpace, sampledLeast(all, (x) => -bed.pivot.fromWall - x).value],
        ];
        for (const [exact, sampled] of twins) {
          expect(exact).toBeLessThanOrEqual(sampled + 1e-9);
          expect(sampled - exact).toBeLessThan(0.01);
        }
      }),
      { numRuns: runs(8), seed: 7 },
    );
  });

  it('first contact within one sampled step', () => {
    let compared = 0;
    fc.assert(
      fc.property(design, (input) => {
        const { bed } = input;
        const hits = new Map(planFold(input).hits.map((h) => [`${h.part} ${h.what}`, h.angle]));
        for (const body of bodiesOf(input).filter((b) => b.kind === 'part')) {
          const arms = cornersOf(bed, body);
          const sampled = {
            floor: sampledLeast(arms, (_, y) => bed.pivot.height + y).firstBelow,
            wall: sampledLeast(arms, (x) => bed.pivot.fromWall + x).firstBelow,
            ceiling: sampledLeast(arms, (_, y) => bed.ceiling - bed.pivot.height - y).firstBelow,
          };
          for (const [what, first] of Object.entries(sampled)) {
            if (first === null) continue;
            compared++;
            const angle = hits.get(`${body.id} ${what}`) ?? Number.NaN;
            expect(angle).toBeLessThanOrEqual(first + 1e-9);
            // A ten-thousandth of a millimeter deep: the sweep sees it a little after the touch.
            expect(first - angle).toBeLessThan(0.1);
          }
        }
      }),
      { numRuns: runs(25), seed: 11 },
    );
    expect(compared).toBeGreaterThan(8);
  });

  it('what is cut off as told just clears, and nothing less does', () => {
    let cuts = 0;
    fc.assert(
      fc.property(design, (input) => {
        for (const hit of planFold(input).hits) {
          if (!hit.part.startsWith('part') || hit.what === 'legs') continue;
          const hitsWhenCut = (by: { z1?: number; y0?: number; y1?: number }) => {
            const solids = input.solids.map((s) => {
              if (s.part !== hit.part) return s;
              const box = boxOf(s.region) ?? { x: 0, y: 0, w: 0, h: 0 };
              const low = by.y0 ?? 0;
              const region = regionOfBox({ ...box, y: box.y + low, h: box.h - low - (by.y1 ?? 0) });
              return { ...s, region, z1: s.z1 - (by.z1 ?? 0) };
            });
            return planFold({ ...input, solids }).hits.some(
              (h) => h.part === hit.part && h.what === hit.what,
            );
          };
          if (hit.thinner !== null) {
            cuts++;
            expect(hitsWhenCut({ z1: hit.thinner + 1e-5 })).toBe(false);
            expect(hitsWhenCut({ z1: hit.thinner - 1e-4 })).toBe(true);
          }
          if (hit.shorter !== null) {
            cuts++;
            const enough = hit.shorter + 1e-5;
            const less = hit.shorter - 1e-4;
            expect(hitsWhenCut({ y0: enough }) && hitsWhenCut({ y1: enough })).toBe(false);
            expect(hitsWhenCut({ y0: less }) && hitsWhenCut({ y1: less })).toBe(true);
          }
        }
      }),
      { numRuns: runs(60), seed: 3 },
    );
    expect(cuts).toBeGreaterThan(24);
  });
});

/** Distance of a convex ring from the step by trying every pair of sides; 0 when they overlap. */
function plainDistance(ring: readonly Point[], step: Point): number {
  const far = 1e5;
  const block: Point[] = [
    { x: -far, y: -far },
    { x: step.x, y: -far },
    { x: step.x, y: step.y },
    { x: -far, y: step.y },
  ];
  const sides = (r: readonly Point[]) => r.map((p, i) => [p, r[(i + 1) % r.length] ?? p] as const);
  // Two convex shapes are apart when a side of one has the whole other on its outer side.
  const apart = (a: readonly Point[], b: readonly Point[]) => {
    const turn = Math.sign(sides(a).reduce((sum, [p, q]) => sum + (p.x * q.y - q.x * p.y), 0));
    return sides(a).some(([p, q]) =>
      b.every((r) => turn * ((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)) <= 0),
    );
  };
  if (!apart(ring, block) && !apart(block, ring)) return 0;
  let least = Infinity;
  for (const [p, q] of sides(ring))
    for (const r of block) least = Math.min(least, distanceToSegment(r, p, q));
  for (const [p, q] of sides(block))
    for (const r of ring) least = Math.min(least, distanceToSegment(r, p, q));
  return least;
}

describe('wall board against a sampled sweep', () => {
  it('never optimistic, within 0.01 mm, and first contact within a step', () => {
    let hit = 0;
    let clear = 0;
    fc.assert(
      fc.property(design, (input) => {
        const { bed } = input;
        const step = { x: bed.wallBoard.thickness, y: bed.wallBoard.height };
        for (const body of bodiesOf(input).filter((b) => b.kind === 'part')) {
          const exact = wallBoardClear(bed, body);
          expect(wallBoardBound(bed, body)).toBeLessThanOrEqual(exact.clear + 1e-9);
          const arms = cornersOf(bed, body);
          let least = Infinity;
          let first: number | null = null;
          for (let i = 0; i < ANGLES; i += 10) {
            const s = sines[i] ?? 0;
            const c = cosines[i] ?? 0;
            const ring = arms.map(({ up, out }) => ({
              x: bed.pivot.fromWall + up * s + out * c,
              y: bed.pivot.height + up * c - out * s,
            }));
            const d = plainDistance(ring, step);
            if (d < least) least = d;
            if (d === 0 && first === null) first = i * STEP;
          }
          expect(exact.clear).toBeLessThanOrEqual(least + 1e-7);
          if (first === null) {
            clear++;
            expect(least - exact.clear).toBeLessThan(0.1);
          } else {
            hit++;
            expect(exact.contact?.angle ?? Number.NaN).toBeLessThanOrEqual(first + 1e-6);
            expect(first - (exact.contact?.angle ?? Number.NaN)).toBeLessThanOrEqual(10 * STEP + 1e-4);
          }
        }
      }),
      { numRuns: runs(20), seed: 5 },
    );
    expect(hit).toBeGreaterThan(2);
    expect(clear).toBeGreaterThan(2);
  });
});

describe('side view', () => {
  it('shows at every angle what the clearances say', () => {
    fc.assert(
      fc.property(design, between(0, 90), (input, angle) => {
        const fold = planFold(input);
        const points = sideView(input, angle).flatMap((s) => (s.kind === 'leg' ? [] : [...s.points]));
        expect(Math.min(...points.map((p) => p.y))).toBeGreaterThanOrEqual(fold.floorClear - 1e-9);
        expect(Math.max(...points.map((p) => p.x))).toBeLessThanOrEqual(fold.floorSpace + 1e-9);
      }),
    );
  });
});
