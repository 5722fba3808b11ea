import type { Mm } from '../measure/units.ts';
import type { Bed } from './bed.ts';

/** A side of the face. */
export type FaceSide = 'width' | 'height';

/** The measure of the bed that lies along a side of the face: upright its width lies across. */
const along = (bed: Bed, side: FaceSide): 'width' | 'length' =>
  (side === 'width') === (bed.pivotAlong === 'end') ? 'width' : 'length';

/** The least that a side of the face can be: the mattress between the frame boards, without any room. */
export const leastFace = (bed: Bed, side: FaceSide): Mm =>
  bed.mattress[along(bed, side)] + 2 * bed.frame.thickness;

/**
 * The bed with a face as it was measured: mattress and boards stay, and the room around the mattress takes what is
 * left between them. Not less than `leastFace`.
 */
export function withFace(bed: Bed, side: FaceSide, size: Mm): Bed {
  const room = Math.max(0, size - leastFace(bed, side));
  return { ...bed, allowance: { ...bed.allowance, [along(bed, side)]: room } };
}
