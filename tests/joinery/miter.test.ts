import { describe, expect, it } from 'vitest';
import { segmentRadius } from '../../src/geometry/curve.ts';
import { sagitta, segmentedArch } from '../../src/joinery/arch.ts';
import { cornerMiter, endRun } from '../../src/joinery/miter.ts';

describe('miters of a corner', () => {
  it('halve what the corner lacks to a straight line', () => {
    expect(cornerMiter(90)).toBe(45);
    expect(cornerMiter(135)).toBe(22.5);
    expect(cornerMiter(180)).toBe(0);
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
    expect(segmentRadius(600, 300)).toBeCloseTo(300, 9);
    expect(segmentRadius(8, 2)).toBeCloseTo(5, 9);
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
