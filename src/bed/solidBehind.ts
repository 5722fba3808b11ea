import type { Box, Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import type { Bed } from './bed.ts';
import { depthsOf } from './depths.ts';
import type { Face } from './face.ts';

/** Distance of a point from the nearest side of the box; negative outside. */
const within = (box: Box, p: Point): Mm =>
  Math.min(p.x - box.x, box.x + box.w - p.x, p.y - box.y, box.y + box.h - p.y);

const touches = (a: Mm, b: Mm): boolean => Math.abs(a - b) <= SAME_LENGTH;

/**
 * Unbroken wood straight behind the face at a point, before air, mattress or room: how deep a fastener
 * could go before it comes out. Zero off the face.
 *
 * Under a skin the frame carries on behind it; cleat and platform do so only where they touch the skin.
 * On the line between two boards the lesser depth holds, since half of the fastener stands over it.
 */
export function solidBehind(face: Face, bed: Bed, point: Point): Mm {
  const inFace = within(face.box, point);
  if (inFace < 0) return 0;
  const z = depthsOf(bed);
  const skin = bed.skin?.thickness ?? 0;
  const overFrame = skin + bed.frame.depth;
  const overCleat = touches(z.cleatLow, z.frameLow) || !bed.skin;
  const overPlatform = touches(z.platformLow, z.frameLow) || !bed.skin;
  const atCleat = skin + (overCleat ? bed.cleats.depth + bed.platform.thickness : 0);
  const atField = skin + (overPlatform ? bed.platform.thickness : 0);
  const fromFrame = inFace - bed.frame.thickness;
  const fromCleat = fromFrame - bed.cleats.width;
  const found: Mm[] = [];
  if (fromFrame <= SAME_LENGTH) found.push(overFrame);
  if (fromFrame >= -SAME_LENGTH && fromCleat <= SAME_LENGTH) found.push(atCleat);
  if (fromCleat >= -SAME_LENGTH) found.push(atField);
  return Math.min(...found);
}
