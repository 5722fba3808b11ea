import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compoundSetting, frameCornerSetting, wallCornerSetting } from '../../src/joinery/sprung.ts';
import { inSpace } from './inSpace.ts';
import { piecesOf, plan, run, shaped, shorterEdge } from './make.ts';

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
    const { flat, nested } = wallCornerSetting(38, 180);
    expect(flat.miter).toBeCloseTo(0, 12);
    expect(flat.bevel).toBeCloseTo(0, 12);
    expect(nested).toEqual({ miter: 0, bevel: 0 });
  });

  it('turn and tilt the other way at an outside corner', () => {
    const inside = wallCornerSetting(45, 90);
    const outside = wallCornerSetting(45, 270);
    expect(outside.flat.miter).toBeCloseTo(-inside.flat.miter, 12);
    expect(outside.flat.bevel).toBeCloseTo(-inside.flat.bevel, 12);
    expect(inside.nested).toEqual({ miter: 45, bevel: 0 });
    expect(outside.nested).toEqual({ miter: -45, bevel: 0 });
  });
});

describe('a frame of sprung molding on the face', () => {
  it('is cut as its boards meet in space, over the whole width of the board', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 12 }),
        fc.integer({ min: 20, max: 70 }),
        fc.integer({ min: 30, max: 120 }),
        fc.constantFrom('inside' as const, 'outside' as const),
        (sides, spring, boardWidth, side) => {
          // As the molding leans on the face: seen from the front it is boardWidth * cos(spring) wide.
          const lean = (spring * Math.PI) / 180;
          const width = boardWidth * Math.cos(lean);
          const stock = shaped('crown', width, {
            spring,
            boardWidth,
            thickness: boardWidth * Math.sin(lean),
          });
          const path = Array.from({ length: sides }, (_, i) => ({
            x: 900 * Math.cos((2 * Math.PI * i) / sides),
            y: 900 * Math.sin((2 * Math.PI * i) / sides),
          }));
          const laid = run('f', path, true, width, { stock: 'crown', side });
          const solid = inSpace(spring, 180 - 360 / sides);
          for (const piece of piecesOf(plan([laid], { stocks: [stock] }), 'f')) {
            for (const end of piece.ends) {
              expect(end.long).toBe('right');
              expect(end.miter).toBeCloseTo(-solid.miter, 6);
              expect(end.bevel).toBeCloseTo(solid.bevel, 6);
              const taken = boardWidth * Math.tan((Math.abs(end.miter) * Math.PI) / 180);
              expect(2 * taken).toBeCloseTo(piece.length - shorterEdge(piece), 6);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('at 45 degrees has the setting of a wall corner, where face and wall are alike', () => {
    expect(frameCornerSetting(45, 90).flat.miter).toBeCloseTo(wallCornerSetting(45, 90).flat.miter, 12);
    expect(frameCornerSetting(38, 90).flat.miter).toBeCloseTo(wallCornerSetting(52, 90).flat.miter, 12);
  });
});
