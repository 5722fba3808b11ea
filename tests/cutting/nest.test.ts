import { EndType, FillRule, inflatePathsD, intersectD, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planCutting } from '../../src/cutting/cutting.ts';
import type { CutSheet } from '../../src/cutting/result.ts';
import { ringsOnSheet } from '../../src/cutting/sheets/lie.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { END_KINDS } from '../../src/joinery/end/table.ts';
import { lengthsOf } from '../../src/joinery/lengths.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { runs } from '../runs.ts';
import { sheet, sheetPiece, shop, stockMap } from './make.ts';

/** A piece of a ring with its crown up: its joints lie on radii. */
function ringPiece(id: string, outer: number, width: number, angle: number): Piece {
  const half = (angle * Math.PI) / 360;
  const at = (r: number, a: number): Point => ({ x: r * Math.sin(a), y: r * Math.cos(a) });
  const steps = 60;
  const shares = Array.from({ length: steps + 1 }, (_, i) => -half + (2 * half * i) / steps);
  const ring = [...shares.map((a) => at(outer - width, a)), ...shares.toReversed().map((a) => at(outer, a))];
  const [left, low] = [Math.min(...ring.map(({ x }) => x)), Math.min(...ring.map(({ y }) => y))];
  const outline = ring.map(({ x, y }) => ({ x: x - left, y: y - low }));
  const [w, h] = [Math.max(...outline.map(({ x }) => x)), Math.max(...outline.map(({ y }) => y))];
  const sawn = END_KINDS.sawn.settle({ miter: 0, secondMiter: null, with: null, stock: null, corner: null });
  const ends = [sawn, sawn] as const;
  return {
    ...sheetPiece(id, w, h),
    ...lengthsOf(outline, ends),
    ...{ label: 'B1', ends, outline, width: h },
    shown: { length: w, width: h, edges: { left: null, right: null } },
  };
}

const shoelace = (ring: readonly Point[]): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] as Point;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);
const planned = (pieces: readonly Piece[], sizes: Parameters<typeof sheet>[0], kerf = 3) =>
  planCutting({
    ...{ pieces, stocks: stockMap(sheet(sizes)), owned: [] },
    ...{ shop: shop({ sheetKerf: kerf }), effort: { nodes: 20_000 } },
  });
const costOf = (sheets: readonly CutSheet[]) => sheets.reduce((sum, { cost }) => sum + cost, 0);
/** The same pieces with no two alike, so that none lie in each other. */
const apart = (pieces: readonly Piece[]) => pieces.map((piece) => ({ ...piece, label: piece.id }));

/** By the polygon library: no piece comes nearer to another than the kerf, and all lie on their sheet. */
function verify(pieces: readonly Piece[], sheets: readonly CutSheet[], kerf: number): void {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  expect(sheets.flatMap(({ placements }) => placements.map(({ piece }) => piece)).sort()).toEqual(
    pieces.map(({ id }) => id).sort(),
  );
  for (const { placements, length, width } of sheets) {
    const rings = placements.map((place) => {
      const [ring = []] = ringsOnSheet(place, byId.get(place.piece) as Piece);
      for (const { x, y } of ring) {
        expect(Math.min(x, y, length - x, width - y)).toBeGreaterThan(-1e-6);
        const { from } = place;
        if (from)
          expect(Math.min(x - from.x, y - from.y, from.x + from.w - x, from.y + from.h - y)).toBeGreaterThan(
            -1e-6,
          );
      }
      return ring.map(({ x, y }) => ({ x, y }));
    });
    for (const [i, a] of rings.entries()) {
      const wide = inflatePathsD([a], kerf - 0.01, JoinType.Round, EndType.Polygon, 2, 6);
      for (const b of rings.slice(i + 1)) {
        const both = intersectD(wide, [b], FillRule.NonZero, 6);
        expect(both.reduce((sum, ring) => sum + Math.abs(shoelace(ring)), 0)).toBeLessThan(1e-3);
      }
    }
  }
}

describe('pieces of a ring', () => {
  it('lie in each other on one blank: six of 60 degrees, 60 wide, on a sheet that holds four side by side', () => {
    // Chord 2 R sin 30° = 400; as high as R - r cos 30° = 105.
    const six = Array.from({ length: 6 }, (_, i) => ringPiece(`p${i}`, 400, 60, 60));
    const sizes = [{ length: 500, width: 480, price: 10 }];
    const alone = planned(apart(six), sizes);
    const nested = planned(six, sizes);
    expect([alone.sheets.length, nested.sheets.length]).toEqual([2, 1]);
    verify(six, nested.sheets, 3);
    // The blank is as wide as one, and higher by less than 5/6 of a piece each.
    const [first] = nested.sheets[0]?.placements ?? [];
    expect(first?.from?.h).toBeLessThan(480);
    expect(first?.from?.w).toBeCloseTo(400, 6);
    expect(nested.checks).toEqual([]);
  });

  it('never cost more, take more sheets or come nearer to each other than a kerf, and are all there', () => {
    const cases = fc.record({
      outer: fc.integer({ min: 150, max: 900 }),
      share: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
      angle: fc.integer({ min: 15, max: 120 }),
      count: fc.integer({ min: 1, max: 9 }),
      others: fc.array(fc.tuple(fc.integer({ min: 60, max: 400 }), fc.integer({ min: 60, max: 400 })), {
        maxLength: 4,
      }),
      kerf: fc.integer({ min: 1, max: 5 }),
    });
    let better = 0;
    fc.assert(
      fc.property(cases, ({ outer, share, angle, count, others, kerf }) => {
        const pieces = [
          ...Array.from({ length: count }, (_, i) => ringPiece(`p${i}`, outer, outer * share, angle)),
          ...others.map(([w, h], i) => sheetPiece(`q${i}`, w, h)),
        ];
        const sizes = [
          { length: 1220, width: 610, price: 12 },
          { length: 2440, width: 1220, price: 40 },
        ];
        const alone = planned(apart(pieces), sizes, kerf);
        const nested = planned(pieces, sizes, kerf);
        const big = nested.checks
          .filter(({ code }) => code === 'piece.too-big')
          .map(({ figures }) => figures.piece);
        verify(
          pieces.filter(({ id }) => !big.includes(id)),
          nested.sheets,
          kerf,
        );
        expect(costOf(nested.sheets)).toBeLessThanOrEqual(costOf(alone.sheets) + 1e-9);
        if (costOf(nested.sheets) === costOf(alone.sheets))
          expect(nested.sheets.length).toBeLessThanOrEqual(alone.sheets.length);
        if (costOf(nested.sheets) < costOf(alone.sheets)) better++;
        const [bound] = nested.sheetsBound;
        if (bound) expect(bound.lowerCost).toBeLessThanOrEqual(bound.cost);
      }),
      { numRuns: runs(40), seed: 7 },
    );
    expect(better).toBeGreaterThan(2);
  });
});
