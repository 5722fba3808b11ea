import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { leastFace, withFace } from '../../src/bed/faceSize.ts';
import { frameBoardOf, frameBoards } from '../../src/editor/pane/bed/frameBoards.ts';
import { inches } from '../../src/measure/units.ts';
import { runs } from '../runs.ts';
import { sampleBed } from './sample.ts';

describe('a face as it was measured', () => {
  it('is the face of the bed whichever way it folds, with mattress and boards as they were', () => {
    const more = fc.double({ min: 0, max: 400, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom('end', 'side'), more, more, (pivotAlong, w, h) => {
        const bed = { ...sampleBed(), pivotAlong } as const;
        const size = { width: leastFace(bed, 'width') + w, height: leastFace(bed, 'height') + h };
        const next = withFace(withFace(bed, 'width', size.width), 'height', size.height);
        const { face } = faceOf(next);
        expect(face.width).toBeCloseTo(size.width, 6);
        expect(face.height).toBeCloseTo(size.height, 6);
        expect(next).toEqual({ ...bed, allowance: next.allowance });
      }),
      { numRuns: runs(200) },
    );
  });

  it('leaves room around the mattress: 45 in between boards of 1 1/2 in around one of 38 in are 4 in', () => {
    const { allowance } = withFace(sampleBed(), 'width', inches(45));
    expect(allowance.width).toBeCloseTo(inches(4), 9);
  });
});

/** Nominal to minimum dressed dry sizes in inches: PS 20, American Softwood Lumber Standard, table 3; from memory. */
const DRESSED = {
  thick: { '1': 3 / 4, '5/4': 1, '2': 1.5 },
  wide: { '4': 3.5, '6': 5.5, '8': 7.25 },
} as const;

it('frame boards sold in inches have the dressed size of their name, and are known again by it', () => {
  for (const board of frameBoards('in')) {
    const [thick, wide] = board.name.split(' x ') as [keyof typeof DRESSED.thick, keyof typeof DRESSED.wide];
    expect(board.thickness).toBeCloseTo(inches(DRESSED.thick[thick]), 9);
    expect(board.depth).toBeCloseTo(inches(DRESSED.wide[wide]), 9);
    expect(frameBoardOf({ ...sampleBed().frame, ...board }, 'in')).toBe(board);
  }
});
