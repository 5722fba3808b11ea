import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { louversOf } from '../../../src/layout/fill/louvers.ts';
import { runs } from '../../runs.ts';

describe('slats of a louver', () => {
  // Slats of 1/4 by 1 3/4 in stiles of 1 1/8, and of 3/8 by 2 in 1 3/8, 1/8 clear of both faces: woodweb.com, "Louvered
  // Shutter Specs" and "Window Shutter Dimensions and Angles"; angle, height and pitch computed in check-values-2.md,
  // section 18.
  it.each([
    [1.75, 0.25, 21.54, 0.25, 0.875, 1.7196, 1.4696],
    [1.75, 0.25, 21.54, 0.1875, 0.875, 1.7196, 1.5321],
    [2, 0.375, 22.94, 0.25, 1.125, 1.988, 1.738],
  ])(
    'of %d by %d at %d degrees, lapped by %d: %d out, %d high, %d apart',
    (width, thickness, tilt, lap, out, high, pitch) => {
      const found = louversOf(high + 12 * pitch, width, thickness, lap - 0.001, tilt);
      expect(found.depth).toBeCloseTo(out, 3);
      expect(found.height).toBeCloseTo(high, 3);
      expect(found.pitch).toBeCloseTo(pitch, 3);
      expect(found.count).toBe(13);
    },
  );

  const slat = fc.record({
    room: fc.integer({ min: 100, max: 2000 }),
    width: fc.integer({ min: 20, max: 150 }),
    thickness: fc.integer({ min: 3, max: 19 }),
    lap: fc.integer({ min: 0, max: 9 }),
    tilt: fc.oneof(fc.constant(undefined), fc.integer({ min: 5, max: 60 })),
  });

  it('are whole from edge to edge, lap by what is asked, and would lap by less with one fewer', () => {
    fc.assert(
      fc.property(slat, ({ room, width, thickness, lap, tilt }) => {
        const { count, pitch, height, depth, tilt: a } = louversOf(room, width, thickness, lap, tilt);
        fc.pre(count > 1);
        expect((count - 1) * pitch + height).toBeCloseTo(room, 6);
        const turn = (a * Math.PI) / 180;
        // The corners of a bar, turned: none of the formulas of the tool.
        const corners = [
          [0, 0],
          [width, 0],
          [width, thickness],
          [0, thickness],
        ].map(([along = 0, out = 0]) => [
          along * Math.cos(turn) - out * Math.sin(turn),
          along * Math.sin(turn) + out * Math.cos(turn),
        ]);
        const extent = (k: 0 | 1) => {
          const all = corners.map((c) => c[k] ?? 0);
          return Math.max(...all) - Math.min(...all);
        };
        expect(height).toBeCloseTo(extent(0), 9);
        expect(depth).toBeCloseTo(extent(1), 9);
        // Planes of two slats lie this far apart: flat on each other, or clear of each other where they lean more.
        const apart = pitch * Math.sin(turn);
        const lapped = (of: number): number =>
          tilt === undefined ? width - of * Math.cos(turn) : height - of;
        expect(lapped(pitch)).toBeGreaterThanOrEqual(Math.min(lap, width - thickness) - 1e-6);
        if (tilt === undefined) expect(apart).toBeCloseTo(thickness, 6);
        else if (count > 2) {
          const fewer = (room - height) / (count - 2);
          expect(lapped(fewer)).toBeLessThan(lap + 1e-6);
        }
      }),
      { numRuns: runs(60) },
    );
  });
});
