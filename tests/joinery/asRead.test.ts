import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TapeRead } from '../../src/design/schema.ts';
import type { Point } from '../../src/geometry/shape.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { runs } from '../runs.ts';
import { boxStrip, pieceOf, plan } from './make.ts';

const W = 40;
const fitted = (long: number, read?: TapeRead, more: Parameters<typeof boxStrip>[5] = {}) =>
  boxStrip('rail', 100, 300, long, W, { fit: true, ...(read ? { read } : {}), ...more });
const base = { slant: 'end', of: 600, moves: 'end' } as const satisfies Partial<TapeRead>;
const edge = (read: number, planned = 600) => ({ planned, read });

const made = (...of: Parameters<typeof fitted>): Piece => pieceOf(plan([fitted(...of)]), 'rail');

/** Corners as a rule and a square would mark them: the left edge up, the start at the left. */
function cornersOf({ outline }: Piece): Record<'a' | 'b' | 'c' | 'd', Point> {
  const low = outline.filter(({ y }) => Math.abs(y) < 1e-9).sort((p, q) => p.x - q.x);
  const high = outline.filter(({ y }) => Math.abs(y - W) < 1e-9).sort((p, q) => p.x - q.x);
  const [a, b, c, d] = [low[0], low[1], high[1], high[0]];
  if (!a || !b || !c || !d || outline.length !== 4) throw new Error('no four corners');
  return { a, b, c, d };
}
const apart = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);
const degrees = (radians: number): number => (radians * 180) / Math.PI;

describe('a piece that a tape read in place', () => {
  it('has the edge that was read, nothing more left on it, and the ends that were planned', () => {
    const piece = made(606, { ...base, left: edge(606) });
    expect(piece.edges).toEqual({ left: 606, right: 606 });
    expect(piece.length).toBe(606);
    expect(piece.overall).toBe(606);
    expect(piece.ends.map(({ cut, miter }) => [cut, miter])).toEqual([
      ['square', 0],
      ['square', 0],
    ]);
    expect(piece.fit.allowance).toBe(0);
    // Without a reading it is left long, as it was before.
    const rough = made(606);
    expect(rough.length).toBeCloseTo(606 + rough.fit.allowance, 9);
    expect(rough.fit.allowance).toBeGreaterThan(0);
  });

  // The angle of an end by plane trigonometry: the edges differ by the width times its tangent.
  it('has both edges, by the angle of one end or half of it at each', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 900, noNaN: true }),
        // In sixteenths of a millimeter: what differs by nothing is square.
        fc.integer({ min: -128, max: 128 }).map((n) => n / 16),
        fc.constantFrom('start', 'end', 'both' as const),
        (left, differ, slant) => {
          const right = left + differ;
          const read: TapeRead = { ...base, slant, left: edge(left), right: edge(right) };
          const piece = made((left + right) / 2, read);
          expect(piece.edges.left).toBeCloseTo(left, 6);
          expect(piece.edges.right).toBeCloseTo(right, 6);
          expect(piece.length).toBeCloseTo(Math.max(left, right), 6);
          const whole = degrees(Math.atan(Math.abs(differ) / W));
          const half = degrees(Math.atan(Math.abs(differ) / 2 / W));
          const want = { start: [whole, 0], end: [0, whole], both: [half, half] }[slant];
          piece.ends.forEach(({ miter }, i) => {
            expect(Math.abs(miter)).toBeCloseTo(want[i] ?? Number.NaN, 6);
          });
          // The long point is on the longer edge at each slanted end.
          if (Math.abs(differ) > 0.01)
            for (const end of piece.ends)
              if (end.miter !== 0) expect(end.long).toBe(differ > 0 ? 'right' : 'left');
        },
      ),
      { numRuns: runs(60) },
    );
  });

  // Independent: four corners drawn first; a tape reads two sides and a diagonal of them.
  it('has both angles at once where a diagonal was read too', () => {
    const lean = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 200, max: 900, noNaN: true }), lean, lean, (long, start, end) => {
        const [a, b, c, d] = [
          { x: 0, y: 0 },
          { x: long, y: 0 },
          { x: long + end, y: W },
          { x: start, y: W },
        ];
        const [left, right] = [apart(d, c), apart(a, b)];
        const read: TapeRead = { ...base, left: edge(left), right: edge(right), diagonal: apart(d, b) };
        const piece = made((left + right) / 2, read);
        const found = cornersOf(piece);
        expect(apart(found.a, found.b)).toBeCloseTo(right, 6);
        expect(apart(found.d, found.c)).toBeCloseTo(left, 6);
        expect(apart(found.d, found.b)).toBeCloseTo(apart(d, b), 6);
        expect(apart(found.a, found.c)).toBeCloseTo(apart(a, c), 6);
        expect(Math.abs(piece.ends[0].miter)).toBeCloseTo(degrees(Math.atan(Math.abs(start) / W)), 5);
        expect(Math.abs(piece.ends[1].miter)).toBeCloseTo(degrees(Math.atan(Math.abs(end) / W)), 5);
      }),
      { numRuns: runs(60) },
    );
  });

  it('keeps mitered ends as they are: one edge read lengthens both by as much', () => {
    // Long point to long point 600 along the upper edge; its lower one is 2 W shorter: 520.
    const cut = { cut: 'miter', angle: 45 } as const;
    const piece = made(600, { ...base, right: edge(530, 520) }, { ends: { start: cut, end: cut } });
    expect(piece.edges.right).toBeCloseTo(530, 9);
    expect(piece.edges.left).toBeCloseTo(610, 9);
    for (const end of piece.ends) expect(Math.abs(end.miter)).toBeCloseTo(45, 9);
  });

  it('says so where no piece can be as it was read, and is cut as planned', () => {
    const read: TapeRead = { ...base, left: edge(600), right: edge(600), diagonal: W / 2 };
    const { pieces, checks } = plan([fitted(600, read)]);
    expect(checks.map(({ code }) => code)).toContain('piece.not-as-read');
    expect(pieces[0]?.fit.read).toBeUndefined();
    expect(pieces[0]?.fit.allowance).toBeGreaterThan(0);
  });
});
