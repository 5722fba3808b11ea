import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compoundSetting, sprungSetting } from '../../src/joinery/sprung.ts';

type Vector = readonly [number, number, number];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const rad = (deg: number): number => (deg * Math.PI) / 180;
const deg = (r: number): number => (r * 180) / Math.PI;

/**
 * The joint as it stands in space. The board runs along x to the corner at the origin; its width rises from
 * the horizontal by `slope`, toward the inside of the corner. The joint plane is upright and halves the
 * corner. Its trace on the board's face, against square across, is the miter; how far the plane leans off the
 * face's normal is the bevel.
 */
function inSpace(slope: number, corner: number): { miter: number; bevel: number } {
  const across: Vector = [0, Math.cos(rad(slope)), Math.sin(rad(slope))];
  const normal: Vector = [0, -Math.sin(rad(slope)), Math.cos(rad(slope))];
  const halving: Vector = [-Math.cos(rad(corner / 2)), Math.sin(rad(corner / 2)), 0];
  const plane = cross(halving, [0, 0, 1]);
  const trace = cross(plane, normal);
  const along = trace[0];
  const up = dot(trace, across);
  return {
    miter: deg(Math.atan2(Math.abs(along), Math.abs(up))) * Math.sign(-along * up),
    bevel: deg(Math.asin(-dot(plane, normal))),
  };
}

describe('compound settings', () => {
  it('are those of the joint plane in space', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 89, noNaN: true }),
        fc.double({ min: 20, max: 340, noNaN: true }),
        (slope, corner) => {
          const ours = compoundSetting(slope, corner);
          const solid = inSpace(slope, corner);
          expect(Math.abs(ours.miter - solid.miter)).toBeLessThan(1e-9);
          expect(Math.abs(ours.bevel - solid.bevel)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('are a plain miter for a side that lies flat, and a plain bevel for one that stands', () => {
    expect(compoundSetting(0, 90)).toEqual({ miter: 45.00000000000001, bevel: 0 });
    const standing = compoundSetting(90, 90);
    expect(standing.miter).toBeCloseTo(0, 12);
    expect(standing.bevel).toBeCloseTo(45, 12);
  });

  it('vanish on a straight wall', () => {
    const { flat, nested } = sprungSetting(38, 180);
    expect(flat.miter).toBeCloseTo(0, 12);
    expect(flat.bevel).toBeCloseTo(0, 12);
    expect(nested).toEqual({ miter: 0, bevel: 0 });
  });

  it('turn and tilt the other way at an outside corner', () => {
    const inside = sprungSetting(45, 90);
    const outside = sprungSetting(45, 270);
    expect(outside.flat.miter).toBeCloseTo(-inside.flat.miter, 12);
    expect(outside.flat.bevel).toBeCloseTo(-inside.flat.bevel, 12);
    expect(inside.nested).toEqual({ miter: 45, bevel: 0 });
    expect(outside.nested).toEqual({ miter: -45, bevel: 0 });
  });
});
