import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/shape.ts';
import { boxStrip, frame, joint, pieceOf, piecesOf, plan, run } from './make.ts';

/**
 * Corners of a frame with a segmented head, counterclockwise from the lower left: the head's corners lie on the
 * circle over the chord `w` with the given rise, R = w² / 8 rise + rise / 2 (the formula of segmental arches in
 * masonry and carpentry handbooks), at equal angles.
 */
function archPath(w: number, spring: number, rise: number, segments: number): Point[] {
  const radius = (w * w) / (8 * rise) + rise / 2;
  const center = { x: w / 2, y: spring + rise - radius };
  const from = Math.atan2(spring - center.y, w / 2);
  const head = Array.from({ length: segments + 1 }, (_, i) => {
    const a = from + ((Math.PI - 2 * from) * i) / segments;
    return { x: center.x + radius * Math.cos(a), y: center.y + radius * Math.sin(a) };
  });
  return [{ x: 0, y: 0 }, { x: w, y: 0 }, ...head];
}

/** How far a point lies inside the line through two corners of a counterclockwise path. */
const within = (p: Point, a: Point, b: Point): number =>
  ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y);

describe('what runs out of a frame to nothing', () => {
  it('stops at it: battens under a random arch fill it and never enter its wood', () => {
    const hundredths = (min: number, max: number) =>
      fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);
    fc.assert(
      fc.property(
        fc.record({
          w: hundredths(400, 1000),
          spring: hundredths(150, 400),
          rise: fc.double({ min: 0.05, max: 0.49, noNaN: true }),
          segments: fc.integer({ min: 2, max: 9 }),
          wood: hundredths(20, 50),
          batten: fc.record({ x: fc.double({ min: 0, max: 1, noNaN: true }), w: hundredths(15, 45) }),
          beyond: hundredths(0, 300),
        }),
        ({ w, spring, rise: share, segments, wood, batten, beyond }) => {
          const rise = w * share;
          const path = archPath(w, spring, rise, segments);
          const arch = run('arch', path, true, wood, { path: { form: 'arched', rise, segments } });
          const top = spring + rise + 1 + beyond;
          const left = wood + batten.x * (w - 2 * wood - batten.w);
          const laid = boxStrip('b', left, wood, batten.w, top - wood);
          const joinery = plan([arch, laid]);
          expect(joinery.checks.filter((c) => c.severity === 'error')).toEqual([]);
          expect(
            joinery.joints.filter((found) => found.kind === 'half-lap' && found.parts[0] !== found.parts[1]),
          ).toEqual([]);
          const corners = piecesOf(joinery, 'b').flatMap((piece) => piece.placed.flatMap((p) => p.outer));
          const sides = path.slice(1).map((a, i) => [a, path[(i + 2) % path.length] ?? a] as const);
          const depths = sides.map(([a, b]) => Math.min(...corners.map((p) => within(p, a, b) - wood)));
          expect(Math.min(...depths)).toBeGreaterThan(-1e-6);
          // Cut to what it meets: it touches the head, and keeps its edges.
          expect(Math.min(...depths.slice(1))).toBeLessThan(1e-6);
          expect(Math.min(...corners.map((p) => Math.abs(p.x - left)))).toBeLessThan(1e-6);
        },
      ),
      { numRuns: Number(process.env.RUNS ?? 100) },
    );
  });

  const rails = frame('f', { x: 0, y: 0, w: 400, h: 600 }, 50);

  it('is told once for each two parts, with the most that is left out', () => {
    const battens = [0, 1, 2].map((i) =>
      boxStrip(`b#${i}`, 80 + i * 80, 50, 30, 600 + i * 20, { part: 'row' }),
    );
    const joinery = plan([rails, ...battens]);
    expect(battens.map(({ id }) => pieceOf(joinery, id).length)).toEqual([500, 500, 500]);
    expect(joinery.checks).toEqual([
      {
        code: 'joint.stops',
        severity: 'note',
        parts: ['row', 'f'],
        at: expect.anything(),
        figures: { count: 3, beyond_mm: expect.closeTo(90, 9) },
      },
    ]);
  });

  it('passes where the person chose a joint, where it runs to something, and where it comes from outside', () => {
    const batten = boxStrip('b', 100, 50, 30, 650);
    const chosen = plan([rails, batten], { joints: [joint(['b', 'f'], 'half-lap')] });
    expect(chosen.joints.filter((found) => found.decided).every(({ kind }) => kind === 'half-lap')).toBe(
      true,
    );
    expect(pieceOf(chosen, 'b').length).toBeGreaterThan(649);
    // On to a rail above the frame, and through both rails.
    const above = boxStrip('above', 0, 700, 400, 40);
    expect(pieceOf(plan([rails, batten, above]), 'b').length).toBeCloseTo(650, 9);
    expect(pieceOf(plan([rails, boxStrip('b', 100, -40, 30, 700)]), 'b').length).toBeCloseTo(700, 9);
    for (const joinery of [chosen, plan([rails, batten, above])])
      expect(joinery.checks.filter((c) => c.code === 'joint.stops')).toEqual([]);
  });
});
