import { describe, expect, it } from 'vitest';
import { chordAngle, ringsOfPath } from '../../src/geometry/curve.ts';
import { ellipseRing } from '../../src/geometry/figures.ts';
import { boxOfPath, pathOfBox, pathOfRings } from '../../src/geometry/path.ts';
import { centroidOfRing } from '../../src/geometry/ring.ts';
import type { Path, Point } from '../../src/geometry/shape.ts';

/** Small cases that the random ones seldom or never reach: ends, ties and the least of everything. */
const p = (x: number, y: number): Point => ({ x, y });

describe('paths', () => {
  it('walk a box counterclockwise from its lower left', () => {
    expect(pathOfBox({ x: 10, y: 20, w: 3, h: 4 })).toEqual([
      { op: 'M', x: 10, y: 20 },
      { op: 'L', x: 13, y: 20 },
      { op: 'L', x: 13, y: 24 },
      { op: 'L', x: 10, y: 24 },
      { op: 'Z' },
    ]);
  });

  it('leave out rings without points', () => {
    expect(pathOfRings([[], [p(1, 2)], []])).toEqual([{ op: 'M', x: 1, y: 2 }, { op: 'Z' }]);
  });

  it('give a triangle as a ring and a line as none', () => {
    const triangle: Path = [
      { op: 'M', x: 0, y: 0 },
      { op: 'L', x: 4, y: 0 },
      { op: 'L', x: 0, y: 3 },
    ];
    const corners = [p(0, 0), p(4, 0), p(0, 3)];
    expect(ringsOfPath([...triangle, { op: 'Z' }])).toEqual([corners]);
    // Left open it is closed by a straight line; walked back to its start, that point stands once.
    expect(ringsOfPath(triangle)).toEqual([corners]);
    expect(ringsOfPath([...triangle, { op: 'L', x: 0, y: 0 }])).toEqual([corners]);
    expect(ringsOfPath(triangle.slice(0, 2))).toEqual([]);
  });

  it('box a curve that turns back in one direction only', () => {
    // x = 3 s²t·4 + 3 s t²·4 = 12 t(1 - t), greatest at t = 1/2: 3; y runs straight from 0 to 9.
    const bow: Path = [
      { op: 'M', x: 0, y: 0 },
      { op: 'C', x1: 4, y1: 3, x2: 4, y2: 6, x: 0, y: 9 },
    ];
    const box = boxOfPath(bow);
    expect(box.w).toBeCloseTo(3, 12);
    expect({ ...box, w: 3 }).toEqual({ x: 0, y: 0, w: 3, h: 9 });
  });
});

describe('arcs', () => {
  it('of a radius under the tolerance still turn by quarters', () => {
    expect(chordAngle(0.001, 0.01)).toBe(90);
    expect(chordAngle(0.01, 0.01)).toBe(90);
    expect(ellipseRing({ x: 0, y: 0, w: 0.002, h: 0.002 }, 0.01)).toHaveLength(4);
  });

  it('take no more chords than their sagitta asks for', () => {
    // sagitta = r (1 - cos(a / 2)): r = 100 and 1 mm give a = 16.22 degrees, so six chords for 90.
    expect(chordAngle(100, 1)).toBeCloseTo(16.22, 2);
    for (const [radius, tolerance] of [
      [300, 0.05],
      [12, 0.01],
    ] as const) {
      const half = ((chordAngle(radius, tolerance) / 2) * Math.PI) / 180;
      expect(radius - Math.sqrt(radius ** 2 - (radius * Math.sin(half)) ** 2)).toBeCloseTo(tolerance, 9);
    }
  });
});

describe('rings', () => {
  it('without area have their center in the middle of their points', () => {
    expect(centroidOfRing([p(0, 0), p(6, 0), p(3, 0)])).toEqual(p(3, 0));
    expect(centroidOfRing([])).toEqual(p(0, 0));
  });
});
