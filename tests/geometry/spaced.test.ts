import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import { spacedAlong } from '../../src/geometry/spaced.ts';

const regular = (sides: number, radius: number) =>
  Array.from({ length: sides }, (_, i) => ({
    x: radius * Math.cos((2 * Math.PI * i) / sides),
    y: radius * Math.sin((2 * Math.PI * i) / sides),
  }));

describe('points spaced along a border', () => {
  it('divide a square of 10 by hand: 4 to a side at 3, one at each corner', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 0, y: 10 },
    ];
    const points = spacedAlong(square, 3);
    expect(points).toHaveLength(16);
    for (const corner of square) expect(points).toContainEqual(corner);
    expect(points.slice(0, 4)).toEqual([0, 2.5, 5, 7.5].map((x) => ({ x, y: 0 })));
  });

  it('go around a circle evenly: its circumference over their number, by pi', () => {
    const points = spacedAlong(regular(720, 50), 3);
    expect(points).toHaveLength(Math.ceil((2 * Math.PI * 50) / 3));
    const chord = 2 * 50 * Math.sin(Math.PI / points.length);
    points.forEach((p, i) => {
      expect(distance(p, points[(i + 1) % points.length]!)).toBeCloseTo(chord, 2);
    });
  });

  it('lie on the border, never farther apart than asked, whatever the border', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            x: fc.double({ min: 5, max: 90, noNaN: true }),
            turn: fc.double({ min: 0.05, max: 1, noNaN: true }),
          }),
          {
            minLength: 3,
            maxLength: 24,
          },
        ),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (rays, spacing) => {
          const whole = rays.reduce((sum, { turn }) => sum + turn, 0);
          let angle = 0;
          const ring = rays.map(({ x, turn }) => {
            angle += (2 * Math.PI * turn) / whole;
            return { x: x * Math.cos(angle), y: x * Math.sin(angle) };
          });
          const points = spacedAlong(ring, spacing);
          points.forEach((p, i) => {
            const off = ring.map((from, k) => distanceToSegment(p, from, ring[(k + 1) % ring.length]!));
            expect(Math.min(...off)).toBeLessThan(1e-9);
            expect(distance(p, points[(i + 1) % points.length]!)).toBeLessThanOrEqual(spacing + 1e-6);
          });
        },
      ),
      { numRuns: 60 },
    );
  });
});
