import type { Mm } from '../measure/units.ts';
import type { Bed } from './bed.ts';

/** The planes of the bare bed, as z of the face: 0 is the rim or the skin, negative lies toward the wall. */
export interface BedDepths {
  /** The frame's lower edges (behind the skin, where there is one). */
  readonly frameLow: Mm;
  readonly cleatLow: Mm;
  /** Where the platform lies on the cleats: the recessed field. */
  readonly platformLow: Mm;
  readonly platformTop: Mm;
  readonly frameTop: Mm;
  /** The sleeper's side of the mattress. */
  readonly mattressTop: Mm;
}

/**
 * Depths of the bed's boards, counted from the face:
 *
 *     z = 0 ──┬──┐ rim        (with a skin, its outer face; the frame lies behind it)
 *             │  ├──┐ ledge   cleat, `cleats.depth`
 *             │  ├──┴───────  field = platform's underside
 *             │  │ platform
 *             │  │ mattress
 *     frame   └──┘ top
 */
export function depthsOf(bed: Bed): BedDepths {
  const frameLow = bed.skin ? -bed.skin.thickness : 0;
  const frameTop = frameLow - bed.frame.depth;
  const platformLow = frameTop + bed.cleats.below;
  const platformTop = platformLow - bed.platform.thickness;
  return {
    frameLow,
    cleatLow: platformLow + bed.cleats.depth,
    platformLow,
    platformTop,
    frameTop,
    mattressTop: platformTop - bed.mattress.thickness,
  };
}
