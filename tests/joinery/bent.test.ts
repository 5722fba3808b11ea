import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { OutlineCorner, Run } from '../../src/design/schema.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { trueAreaOf } from '../../src/geometry/trueArea.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { at, design, lay, run } from '../layout/sample.ts';
import { runs } from '../runs.ts';
import { shoelace } from '../shoelace.ts';
import { joineryOf } from './joined.ts';

/** Lath is 40 wide and 6 thick: stood on its edge it is bent where it is thin. */
const THIN = 6;
type Path = Extract<Run['path'], { readonly form: 'points' }>;

function planned(box: Box, path: Omit<Path, 'form' | 'band'>, pieces = 1, more: Partial<Run> = {}) {
  const band = { stock: null, pieces };
  const part: Run = {
    ...run('trim', box),
    path: { form: 'points', ...path, band },
    side: 'inside',
    onEdge: true,
  };
  const layout = lay(design([{ ...part, ...more }]));
  const joinery = joineryOf(layout, 60);
  const bent = joinery.pieces.filter((piece) => piece.bent);
  return { joinery, bent, region: layout.parts[0]?.region ?? [], checks: layout.checks };
}

/** An eyebrow, its path from the right foot over the crown to the left one. */
const eyebrow = (rise: number): OutlineCorner[] => [
  { u: 1, v: 0, side: { as: 'rise', rise } },
  { u: 0, v: 0 },
];
const sumOf = (pieces: readonly Piece[], of: (piece: Piece) => number): number =>
  pieces.reduce((sum, piece) => sum + of(piece), 0);

describe('stock bent along an arc', () => {
  /**
   * R = (c² + 4 r²) / 8 r (Building Trades Pocketbook, ICS): a span of 60 in that rises 10 in has a radius of 50 in, spans
   * 73.740 degrees, and is 64.3501 in long (check-values, section 16).
   */
  it('is cut as long as its middle line: an arc of 60 in that rises 10', () => {
    const inch = 25.4;
    // The path is the outer edge, half of the stock outside of its middle line of 50 in.
    const outer = 50 * inch + THIN / 2;
    const half = 30 * inch * (outer / (50 * inch));
    const rise = outer - Math.sqrt(outer ** 2 - half ** 2);
    const { bent, joinery } = planned(
      at(100, 100, 2 * half, rise),
      { points: eyebrow(rise), closed: false },
      1,
    );
    expect(bent).toHaveLength(1);
    expect((bent[0]?.length ?? 0) / inch).toBeCloseTo(64.3501, 4);
    expect(bent[0]).toMatchObject({ form: 'flat', stock: 'lath', thickness: 40 });
    expect(bent[0]?.width).toBeCloseTo(THIN, 9);
    expect(bent[0]?.bent?.radius).toBeCloseTo(50 * inch - THIN / 2, 6);
    for (const { cut, miter } of bent[0]?.ends ?? []) expect([cut, miter]).toEqual(['square', 0]);
    expect(joinery.arches).toMatchObject([{ bent: true, pieces: 1, angle: expect.closeTo(73.74, 3) }]);
  });

  it('goes around a circle: the theorem of Pappus, length times section is the ring', () => {
    const corner = 300 * Math.SQRT1_2;
    const side = { as: 'rise', rise: 300 - corner } as const;
    const points = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ].map(([u = 0, v = 0]) => ({ u, v, side }));
    const { bent, region } = planned(at(100, 100, 600, 600), { points, closed: true }, 2);
    expect(bent).toHaveLength(8);
    expect(new Set(bent.map(({ label }) => label)).size).toBe(1);
    const ring = Math.PI * (300 ** 2 - (300 - THIN) ** 2);
    expect(sumOf(bent, ({ length }) => length)).toBeCloseTo(2 * Math.PI * (300 - THIN / 2), 6);
    expect(sumOf(bent, ({ length }) => length) * THIN).toBeCloseTo(ring, 5);
    expect(trueAreaOf(region)).toBeCloseTo(ring, 5);
  });

  it('runs on into rails and stiles where a frame has rounded corners, all cuts square', () => {
    const cut = { how: 'rounded', size: 120 } as const;
    const points = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ].map(([u = 0, v = 0]) => ({ u, v, cut }));
    const { joinery, bent } = planned(at(100, 100, 600, 800), { points, closed: true });
    for (const { ends } of joinery.pieces) for (const { miter } of ends) expect(miter).toBeCloseTo(0, 6);
    // All of one edge: two sides of 360, two of 560, and a whole circle of the middle radius.
    expect(sumOf(joinery.pieces, ({ length }) => length)).toBeCloseTo(
      2 * (360 + 560) + 2 * Math.PI * (120 - THIN / 2),
      6,
    );
    expect(bent).toHaveLength(4);
    expect(joinery.checks).toEqual([]);
  });

  it('is as long and as much wood before as after, whichever way and on which side it bends', () => {
    const cases = fc.record({
      long: fc.double({ min: 300, max: 900, noNaN: true }),
      share: fc.double({ min: 0.03, max: 0.45, noNaN: true }),
      back: fc.boolean(),
      side: fc.constantFrom<Run['side']>('inside', 'outside'),
      pieces: fc.integer({ min: 1, max: 4 }),
      onEdge: fc.boolean(),
    });
    fc.assert(
      fc.property(cases, ({ long, share, back, side, pieces, onEdge }) => {
        const rise = share * long;
        const points: OutlineCorner[] = back
          ? [
              { u: 0, v: 0, side: { as: 'rise', rise: -rise } },
              { u: 1, v: 0 },
            ]
          : eyebrow(rise);
        const { bent, region } = planned(at(50, 100, long, rise), { points, closed: false }, pieces, {
          side,
          ...(onEdge ? {} : { onEdge: undefined }),
        });
        const across = onEdge ? THIN : 40;
        const radius = long ** 2 / (8 * rise) + rise / 2;
        const angle = 4 * Math.atan((2 * rise) / long);
        // Of the way over the crown from the right the left is inside; of the other way it is outside.
        const inward = (side === 'inside') === !back;
        const middle = inward ? radius - across / 2 : radius + across / 2;
        expect(bent).toHaveLength(pieces);
        for (const piece of bent) {
          expect(piece.length).toBeCloseTo((middle * angle) / pieces, 6);
          expect(shoelace(piece.outline)).toBeCloseTo(trueAreaOf(piece.placed), 4);
          expect(piece.bent?.radius).toBeCloseTo(middle - across / 2, 6);
        }
        expect(sumOf(bent, ({ outline }) => shoelace(outline))).toBeCloseTo(trueAreaOf(region), 3);
      }),
      { numRuns: runs(60) },
    );
  });

  it('has ends that lie on their cut once it is bent: a pointed head closes along its middle', () => {
    // Two arcs of radius 36 in over a span of 36 in, their centers at the springings (equilateral; section 16).
    const s = 914.4;
    const top = s * Math.sin(Math.PI / 3);
    const side = { as: 'radius', radius: s } as const;
    const points: OutlineCorner[] = [
      { u: 1, v: 0, side },
      { u: 0.5, v: 1, side },
      { u: 0, v: 0 },
    ];
    const { bent } = planned(at(50, 100, s, top), { points, closed: false });
    expect(bent).toHaveLength(2);
    const [right] = bent;
    if (!right) throw new Error('nothing is bent');
    // Bent back by hand: along the middle line about the left springing, from the foot at 0 degrees on.
    const middle = s - THIN / 2;
    const foot = { x: 50, y: 100 };
    const onFace = right.outline.map(({ x, y }) => {
      const a = x / middle;
      const r = s - THIN + (THIN - y);
      return { x: foot.x + r * Math.cos(a), y: foot.y + r * Math.sin(a) };
    });
    const tips = onFace.filter(({ y }) => y > 500);
    expect(tips).toHaveLength(2);
    for (const { x } of tips) expect(x).toBeCloseTo(50 + s / 2, 6);
    // The angle between the cut and a square one: the crown is 60 degrees up the arc.
    const miters = right.ends.map(({ miter }) => Math.abs(miter)).sort((a, b) => a - b);
    expect(miters[0]).toBe(0);
    expect(miters[1]).toBeCloseTo(30, 0);
  });

  /** Laminates: 1/150 of the sharpest curve, some softwoods 1/100 (Chudley and Greeno, Building Construction Handbook). */
  it.each([
    [950, []],
    [850, [['run.bent-tight', 'note']]],
    [550, [['run.bent-tight', 'warning']]],
  ])('tells of a radius that is too tight for its thickness: 6 at an inner radius of %d', (inner, found) => {
    const radius = inner + THIN;
    const rise = radius - Math.sqrt(radius ** 2 - 400 ** 2);
    const { checks } = planned(at(50, 100, 800, rise), { points: eyebrow(rise), closed: false });
    expect(
      checks.filter(({ code }) => code.startsWith('run')).map(({ code, severity }) => [code, severity]),
    ).toEqual(found);
    const [check] = checks.filter(({ code }) => code === 'run.bent-tight');
    if (check) expect(check.figures.most_mm).toBeCloseTo(inner / 150, 6);
  });

  it('is asked of boards alone: a molding of another section is not there for it', () => {
    const { checks } = planned(at(50, 100, 800, 90), { points: eyebrow(90), closed: false }, 1, {
      stock: 'sheet',
    });
    expect(checks.map(({ code }) => code)).toContain('part.unknown-stock');
  });
});
