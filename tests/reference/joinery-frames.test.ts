import { describe, expect, it } from 'vitest';
import { cornerMiter } from '../../src/joinery/miter.ts';
import { inches } from '../../src/measure/units.ts';
import { frame, piecesOf, plan } from '../joinery/make.ts';

/** Interior angle of a frame with equal sides, and what the saw is turned to. */
const regularMiter = (sides: number): number => cornerMiter(180 - 360 / sides);

/** Long points of the four rails around an opening, in inches. */
const railsAround = (w: number, h: number, width: number): number[] => {
  const box = { x: 0, y: 0, w: inches(w), h: inches(h) };
  const { pieces } = plan([frame('f', box, inches(width), { side: 'outside' })]);
  return pieces.map((piece) => piece.length / 25.4);
};
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** Outside answers of check-values section 1. */
describe('miters of regular frames', () => {
  it('are those printed for 4 to 10 sides', () => {
    // DeWalt miter saw manual p. 17 and Craftsman 315.21212 p. 24: 25.7 (25.71) at 7 sides.
    const printed = new Map([
      [4, 45],
      [5, 36],
      [6, 30],
      [7, 25.71],
      [8, 22.5],
      [9, 20],
      [10, 18],
    ]);
    for (const [sides, miter] of printed) expect(Math.abs(regularMiter(sides) - miter)).toBeLessThan(0.005);
    expect(regularMiter(3)).toBeCloseTo(60, 9);
    expect(regularMiter(11)).toBeCloseTo(16.3636, 4);
    expect(regularMiter(12)).toBeCloseTo(15, 9);
  });

  it('agree with the steel square to a thirty-second', () => {
    // Hodgson, ABC of the Steel Square: 12 on the blade takes 4 31/32 in on the tongue for an octagon and
    // 6 15/16 in for a hexagon.
    const tongue = (sides: number) => 12 * Math.tan((regularMiter(sides) * Math.PI) / 180);
    expect(Math.abs(tongue(8) - (4 + 31 / 32))).toBeLessThan(1 / 32);
    expect(Math.abs(tongue(6) - (6 + 15 / 16))).toBeLessThan(1 / 32);
  });
});

describe('frame lengths', () => {
  it('of a 16 by 20 in frame in 2 in molding come to 72 in of picture and 16 in of corners', () => {
    // framing4yourself.com, "How to figure the right lengths": rails for 16 and 20; 72 + 16 = 88, and with
    // 1/4 in allowance 88 1/4 in.
    const laid = frame('f', { x: 0, y: 0, w: inches(16), h: inches(20) }, inches(2), { side: 'outside' });
    const pieces = piecesOf(plan([laid]), 'f');
    expect(pieces.map((piece) => piece.short / 25.4)).toEqual(
      [16, 20, 16, 20].map((l) => expect.closeTo(l, 9)),
    );
    expect(sum(railsAround(16, 20, 2))).toBeCloseTo(88, 9);
    // The allowance is spread over the four sides of the opening.
    expect(sum(railsAround(16 + 1 / 16, 20 + 1 / 16, 2))).toBeCloseTo(88.25, 9);
  });

  it('add to a panel its allowance and twice what stands outside of its rabbet', () => {
    // vermonthardwoods.com: D + allowance + 2 (width - rabbet); whole frame with saw loss C:
    // 2 (D1 + D2) + 4 (2 (W - R) + A) + 3 C. Here D 16 and 20, W 2, R 1/4, A 1/8, C 1/8 (hand-worked). The
    // molding's inner edge, which the frame follows, stands a rabbet within the loose panel all around.
    const [W, R, A, C] = [2, 1 / 4, 1 / 8, 1 / 8];
    const rails = railsAround(16 + A - 2 * R, 20 + A - 2 * R, W);
    expect(rails[0]).toBeCloseTo(19.625, 9);
    expect(sum(rails) + 3 * C).toBeCloseTo(2 * 36 + 4 * (2 * (W - R) + A) + 3 * C, 9);
    // Fine Woodworking no. 275: panel + 1/16 + 2 x (rabbet to outside edge).
    expect(railsAround(16 + 1 / 16 - 2 * R, 20, W)[0]).toBeCloseTo(16 + 1 / 16 + 2 * 1.75, 9);
  });
});
