import type { Point } from '../geometry/shape.ts';
import { type Deg, type Mm, radians } from '../measure/units.ts';
import type { Bed } from './bed.ts';

/** Swing angles: stowed against the wall, and lowered with the face looking at the floor. */
export const STOWED: Deg = 0;
export const LOWERED: Deg = 90;

/** A place of the side view counted from the pivot, stowed: `up` along the face, `out` into the room. */
export interface Arm {
  readonly up: Mm;
  readonly out: Mm;
}

/** Where a place on the face (`y` up the face, `z` out of it) lies from the pivot. */
export function armOf(bed: Bed, y: Mm, z: Mm): Arm {
  return { up: y - bed.pivot.aboveEdge, out: z + bed.pivot.fromFace };
}

/**
 * Room coordinates (x from the wall, y above the floor) of an arm with the bed lowered by `angle`:
 *
 *     x = fromWall + up sin a + out cos a,   y = height + up cos a - out sin a
 *
 * so that at 90 degrees what was up reaches into the room and what stood out of the face hangs down.
 */
export const swing = (bed: Bed, arm: Arm, angle: Deg): Point => swungBy(bed, angle)(arm);

/** The same of any arm with the bed at one angle. */
export function swungBy({ pivot }: Bed, angle: Deg): (arm: Arm) => Point {
  const s = Math.sin(radians(angle));
  const c = Math.cos(radians(angle));
  return ({ up, out }) => ({
    x: pivot.fromWall + up * s + out * c,
    y: pivot.height + up * c - out * s,
  });
}

/** Room coordinates of the place (`y` up the face, `z` out of it) with the bed lowered by `angle`. */
export function roomPoint(bed: Bed, y: Mm, z: Mm, angle: Deg): Point {
  return swing(bed, armOf(bed, y, z), angle);
}
