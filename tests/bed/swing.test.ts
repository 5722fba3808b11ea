import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomPoint } from '../../src/bed/swing.ts';
import { sampleBed } from './sample.ts';

describe('swing', () => {
  // Pivot 14 in up and 9 in from the wall, 4 in above the face's lower edge, 3 in behind the face.
  const bed = sampleBed();
  const at = (y: number, z: number, angle: number) => {
    const p = roomPoint(bed, y * 25.4, z * 25.4, angle);
    return [+(p.x / 25.4).toFixed(9), +(p.y / 25.4).toFixed(9)];
  };

  it('stowed, the lower edge stands 10 in above the floor and 12 in from the wall', () => {
    expect(at(0, 0, 0)).toEqual([12, 10]);
    expect(at(78, 0, 0)).toEqual([12, 88]);
    expect(at(78, 2, 0)).toEqual([14, 88]);
  });

  it('lowered, the face looks at the floor 11 in above it', () => {
    expect(at(78, 0, 90)).toEqual([9 + 74, 11]);
    expect(at(0, 0, 90)).toEqual([5, 11]);
    expect(at(78, 2, 90)).toEqual([83, 9]);
  });

  it('turns about the pivot: every place keeps its distance from it', () => {
    const n = fc.double({ min: -500, max: 2500, noNaN: true });
    fc.assert(
      fc.property(n, n, fc.double({ min: 0, max: 90, noNaN: true }), (y, z, angle) => {
        const away = (a: number) => {
          const p = roomPoint(bed, y, z, a);
          return Math.hypot(p.x - bed.pivot.fromWall, p.y - bed.pivot.height);
        };
        expect(away(angle)).toBeCloseTo(away(0), 8);
      }),
    );
  });
});
