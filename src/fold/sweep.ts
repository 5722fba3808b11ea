import type { Bed } from '../bed/bed.ts';
import type { Face } from '../bed/face.ts';
import type { Mm } from '../measure/units.ts';
import type { Body } from './body.ts';
import { hitsOf } from './hits.ts';
import { farthest, planeClear } from './plane.ts';
import type { Hit } from './result.ts';
import { wallBoardBound } from './wallBoard.ts';
import type { Extreme } from './wave.ts';

/** What one body comes to through the whole swing, whatever else swings with it. */
export interface Sweep {
  readonly body: Body;
  readonly floor: Extreme;
  readonly wall: Extreme;
  readonly ceiling: Extreme;
  readonly farthest: Extreme;
  /** It stays at least this far from the wall board. */
  readonly boardBound: Mm;
  readonly hits: readonly Hit[];
}

export const sweepOf = (bed: Bed, face: Face, body: Body): Sweep => ({
  body,
  floor: planeClear(bed, body, 'floor'),
  wall: planeClear(bed, body, 'wall'),
  ceiling: planeClear(bed, body, 'ceiling'),
  farthest: farthest(bed, body),
  boardBound: wallBoardBound(bed, body),
  hits: hitsOf(bed, face, body),
});
