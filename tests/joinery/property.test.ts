import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/design/schema.ts';
import { intersect, union } from '../../src/geometry/clip.ts';
import { areaOf } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/shape.ts';
import type { Joinery } from '../../src/joinery/piece.ts';
import type { Laid, LaidPart } from '../../src/layout/laid.ts';
import { runs } from '../runs.ts';
import { bandOf, boxStrip, brace, frame, joint, plan, run, shorterEdge, strip } from './make.ts';

/** Square millimeters that the grid of the polygon library may lose or win on a face. */
const GRAIN = 30;
const KINDS: readonly Joint['kind'][] = ['miter', 'butt', 'cope', 'half-lap'];

const areaSum = (regions: readonly Region[]): number => regions.reduce((sum, r) => sum + areaOf(r), 0);
const regionsOf = (joinery: Joinery): Region[] => joinery.pieces.map((piece) => piece.placed);
const overlapTold = (joinery: Joinery): boolean =>
  joinery.checks.some((check) => check.code === 'joint.overlap');

/** Every pair of pieces lies apart, or a check tells of their parts. */
function expectApart(joinery: Joinery): void {
  const told = new Set(
    joinery.checks.filter((c) => c.code === 'joint.overlap').map((c) => [...c.parts].sort().join()),
  );
  joinery.pieces.forEach((a, i) => {
    for (const b of joinery.pieces.slice(i + 1)) {
      const parts = a.part === b.part ? [a.part] : [a.part, b.part].sort();
      if (told.has(parts.join())) continue;
      const shared = areaOf(intersect(a.placed, b.placed));
      if (shared > GRAIN) expect.fail(`${a.id} and ${b.id} share ${shared} mm2`);
    }
  });
}

/** Stiles, rails and cross pieces of one frame that all run from edge to edge. */
const grid = fc.record({
  w: fc.integer({ min: 500, max: 1500 }),
  h: fc.integer({ min: 500, max: 2000 }),
  stile: fc.integer({ min: 20, max: 100 }),
  rail: fc.integer({ min: 20, max: 100 }),
  ups: fc.uniqueArray(fc.integer({ min: 2, max: 8 }), { maxLength: 3 }),
  overs: fc.uniqueArray(fc.integer({ min: 2, max: 8 }), { maxLength: 3 }),
  decisions: fc.array(
    fc.record({ pair: fc.nat(), kind: fc.constantFrom(...KINDS), through: fc.integer({ min: 0, max: 2 }) }),
    { maxLength: 6 },
  ),
});

function gridParts(g: { w: number; h: number; stile: number; rail: number; ups: number[]; overs: number[] }) {
  const uprights = [0, g.w - g.stile, ...g.ups.map((u) => (g.w * u) / 10)];
  const levels = [0, g.h - g.rail, ...g.overs.map((o) => (g.h * o) / 10)];
  return [
    ...uprights.map((x, i) => boxStrip(`u${i}`, x, 0, g.stile, g.h)),
    ...levels.map((y, i) => boxStrip(`l${i}`, 0, y, g.w, g.rail)),
  ];
}

function apartUprights(g: {
  w: number;
  h: number;
  stile: number;
  rail: number;
  ups: number[];
  overs: number[];
}) {
  return g.stile < g.w / 10 && g.rail < g.h / 10;
}

describe('frames of crossing strips', () => {
  it('keep all their wood and lie in it once, whatever the joints', () => {
    fc.assert(
      fc.property(grid.filter(apartUprights), (g) => {
        const parts = gridParts(g);
        const ids = parts.map((part) => part.id);
        const ups = ids.filter((id) => id.startsWith('u'));
        const overs = ids.filter((id) => id.startsWith('l'));
        const joints = g.decisions.map(({ pair, kind, through }) => {
          const u = ups[pair % ups.length] as string;
          const l = overs[(pair >> 4) % overs.length] as string;
          return joint([u, l], kind, [u, l, undefined][through]);
        });
        const joinery = plan(parts, { joints });
        expectApart(joinery);
        expect(overlapTold(joinery)).toBe(false);
        const bands = areaOf(union(parts.map((part) => part.region)));
        expect(Math.abs(areaSum(regionsOf(joinery)) - bands)).toBeLessThan(GRAIN);
        const solids = areaSum(joinery.solids.map((solid) => solid.region));
        expect(Math.abs(solids - bands)).toBeLessThan(GRAIN);
      }),
      { numRuns: runs(20) },
    );
  });
});

describe('closed runs', () => {
  it('cover the band of their path, mitered or butted', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 14 }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.integer({ min: 5, max: 60 }),
        fc.constantFrom('miter' as const, 'butt-up' as const, 'butt-across' as const),
        (sides, turn, width, corner) => {
          const at = (radius: number) =>
            Array.from({ length: sides }, (_, i) => {
              const a = (2 * Math.PI * i) / sides + (turn * Math.PI) / 180;
              return { x: radius * Math.cos(a), y: radius * Math.sin(a) };
            });
          const joinery = plan([run('p', at(500), true, width, { corner })]);
          const inner = 500 - width / Math.cos(Math.PI / sides);
          const polygon = (radius: number) => (sides / 2) * radius ** 2 * Math.sin((2 * Math.PI) / sides);
          expect(Math.abs(areaSum(regionsOf(joinery)) - (polygon(500) - polygon(inner)))).toBeLessThan(1e-3);
          expectApart(joinery);
        },
      ),
      { numRuns: runs(20) },
    );
  });

  it('lose at each end what the long point has over the short point', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 900 }),
        fc.integer({ min: 100, max: 900 }),
        fc.integer({ min: 5, max: 45 }),
        (w, h, width) => {
          for (const piece of plan([frame('f', { x: 0, y: 0, w, h }, width)]).pieces) {
            const lost = piece.ends.reduce(
              (sum, end) => sum + piece.width * Math.tan((Math.abs(end.miter) * Math.PI) / 180),
              0,
            );
            expect(piece.length - shorterEdge(piece)).toBeCloseTo(lost, 8);
          }
        },
      ),
    );
  });
});

/** Strips, braces and frames anywhere, at any angle. */
const coordinate = fc.integer({ min: 0, max: 1000 });
const anyStrip = fc.record({
  a: fc.record({ x: coordinate, y: coordinate }),
  b: fc.record({ x: coordinate, y: coordinate }),
  width: fc.integer({ min: 10, max: 90 }),
  how: fc.constantFrom(
    'turned' as const,
    'box' as const,
    'rising' as const,
    'falling' as const,
    'frame' as const,
  ),
});

function anyPart(
  s: { a: { x: number; y: number }; b: { x: number; y: number }; width: number; how: string },
  i: number,
): LaidPart {
  const id = `s${i}`;
  const box = {
    x: Math.min(s.a.x, s.b.x),
    y: Math.min(s.a.y, s.b.y),
    w: Math.abs(s.a.x - s.b.x) + 10,
    h: Math.abs(s.a.y - s.b.y) + 10,
  };
  if (s.how === 'rising' || s.how === 'falling') return brace(id, s.how, box, s.width);
  if (s.how === 'box') return boxStrip(id, box.x, box.y, s.width, box.h + 100);
  if (s.how === 'frame') return frame(id, { ...box, w: box.w + 200, h: box.h + 200 }, s.width);
  return strip(id, s.a, { x: s.b.x + 1, y: s.b.y + 150 }, s.width);
}

describe('strips laid anyhow', () => {
  it('never lie in each other untold, whatever the joints', () => {
    fc.assert(
      fc.property(
        fc.array(anyStrip, { minLength: 2, maxLength: 7 }),
        fc.array(fc.tuple(fc.nat(6), fc.nat(6), fc.constantFrom(...KINDS), fc.nat(2)), { maxLength: 5 }),
        (strips, decided) => {
          const joints = decided.map(([i, j, kind, through]) =>
            joint([`s${i}`, `s${j}`], kind, [`s${i}`, `s${j}`, undefined][through]),
          );
          const joinery = plan(strips.map(anyPart), { joints });
          expectApart(joinery);
          for (const piece of joinery.pieces) {
            expect(piece.length).toBeGreaterThan(0);
            expect(piece.length).toBeGreaterThanOrEqual(
              Math.max(piece.edges.left ?? 0, piece.edges.right ?? 0) - 1e-6,
            );
            expect(piece.outline.every((p) => Number.isFinite(p.x) && Number.isFinite(p.y))).toBe(true);
            expect(piece.label).toMatch(/^[A-Z]+\d+$/);
          }
        },
      ),
      { numRuns: runs(40) },
    );
  });

  it('come out the same when the plan is made again, byte for byte', () => {
    fc.assert(
      fc.property(fc.array(anyStrip, { maxLength: 6 }), (strips) => {
        const parts = strips.map(anyPart);
        const copy = JSON.parse(JSON.stringify(parts)) as LaidPart[];
        expect(JSON.stringify(plan(copy))).toBe(JSON.stringify(plan(parts)));
      }),
      { numRuns: runs(12) },
    );
  });

  it('keep their pieces when the whole face is shifted or turned by a quarter', () => {
    fc.assert(
      fc.property(fc.array(anyStrip, { minLength: 1, maxLength: 5 }), (strips) => {
        // Turned strips only: what runs through is a matter of up and across, so joints are all decided.
        const laid = strips.map((s, i) => anyPart({ ...s, how: 'turned' }, i)) as Laid<'strip'>[];
        const joints = laid.flatMap((a, i) =>
          laid.slice(i + 1).map((b) => joint([a.id, b.id], 'butt', a.id)),
        );
        const moved = laid.map((part) => {
          const quarter = (p: { x: number; y: number }) => ({ x: 700 - p.y, y: p.x - 300 });
          return strip(part.id, quarter(part.leg.start), quarter(part.leg.end), part.leg.width);
        });
        const before = plan(laid, { joints }).pieces;
        const after = plan(moved, { joints }).pieces;
        expect(after.map((piece) => piece.id)).toEqual(before.map((piece) => piece.id));
        after.forEach((piece, i) => {
          expect(piece.length).toBeCloseTo(before[i]?.length ?? Number.NaN, 5);
        });
      }),
      { numRuns: runs(12) },
    );
  });
});

describe('a strip by its band', () => {
  it('is its band exactly when nothing meets it', () => {
    fc.assert(
      fc.property(anyStrip, (s) => {
        const laid = anyPart({ ...s, how: 'turned' }, 0) as Laid<'strip'>;
        const [piece] = plan([laid]).pieces;
        const band = [{ outer: bandOf(laid.leg), holes: [] }];
        expect(Math.abs(areaOf(piece?.placed ?? []) - areaOf(band))).toBeLessThan(1e-6 * areaOf(band));
      }),
    );
  });
});
