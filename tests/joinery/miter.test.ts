import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { archRadius, sagitta, segmentedArch } from '../../src/joinery/arch.ts';
import { cornerMiter, endRun, unequalMiters } from '../../src/joinery/miter.ts';

describe('miters of a corner', () => {
  it('halve what the corner lacks to a straight line', () => {
    expect(cornerMiter(90)).toBe(45);
    expect(cornerMiter(135)).toBe(22.5);
    expect(cornerMiter(180)).toBe(0);
  });

  it('of unequal widths at a right angle are atan(b / a) and atan(a / b)', () => {
    const [onTwo, onThree] = unequalMiters(2, 3, 90);
    expect(onTwo).toBeCloseTo(56.309932474, 8);
    expect(onThree).toBeCloseTo(33.690067526, 8);
  });

  it('of equal widths are the plain miter, and always fill the corner', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 300, noNaN: true }),
        fc.double({ min: 5, max: 300, noNaN: true }),
        fc.double({ min: 5, max: 175, noNaN: true }),
        (a, b, t) => {
          const [p, q] = unequalMiters(a, b, t);
          expect(p + q).toBeCloseTo(180 - t, 8);
          expect(unequalMiters(a, a, t)[0]).toBeCloseTo(cornerMiter(t), 8);
          // Both pieces have the same cut: its length is width / cos(miter) on either.
          const rad = Math.PI / 180;
          expect(a / Math.cos(p * rad) / (b / Math.cos(q * rad))).toBeCloseTo(1, 6);
        },
      ),
    );
  });
});

describe('arches', () => {
  it('have the sagitta of a chord', () => {
    // A regular hexagon of radius 100: apothem 86.6025.
    expect(sagitta(100, 60)).toBeCloseTo(100 - 86.602540378, 8);
    // Half a circle in one straight segment falls short by the radius.
    expect(sagitta(250, 180)).toBeCloseTo(250, 9);
  });

  it('have the radius over chord and rise', () => {
    expect(archRadius(600, 300)).toBeCloseTo(300, 9);
    expect(archRadius(8, 2)).toBeCloseTo(5, 9);
  });

  it('of segments share the arc evenly', () => {
    const arch = segmentedArch(600, 300, 6);
    expect(arch.angle).toBeCloseTo(30, 9);
    expect(arch.miter).toBeCloseTo(15, 9);
    expect(arch.chord).toBeCloseTo(2 * 300 * Math.sin(Math.PI / 12), 9);
    expect(arch.sagitta).toBeCloseTo(300 * (1 - Math.cos(Math.PI / 12)), 9);
  });
});

describe('the run of an end', () => {
  it('is width / tan(t / 2) from the long to the short point', () => {
    expect(endRun(50, cornerMiter(120))).toBeCloseTo(50 / Math.tan(Math.PI / 3), 9);
    expect(endRun(50, -45)).toBeCloseTo(50, 9);
  });
});
