import type { Bed } from '../bed/bed.ts';
import { type Arm, swing } from '../bed/swing.ts';
import type { Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Deg } from '../measure/units.ts';
import { type Body, cornersOf } from './body.ts';
import { type Extreme, firstBelow, least, most, type Wave } from './wave.ts';

export type PlaneName = 'floor' | 'wall' | 'ceiling';

/** Distance of a turning arm's end from each plane of the room, positive on the free side. */
const PLANES: Readonly<Record<PlaneName, (bed: Bed, arm: Arm) => Wave>> = {
  floor: (bed, { up, out }) => ({ base: bed.pivot.height, c: up, s: -out }),
  wall: (bed, { up, out }) => ({ base: bed.pivot.fromWall, c: out, s: up }),
  ceiling: (bed, { up, out }) => ({ base: bed.ceiling - bed.pivot.height, c: -up, s: out }),
};

/** Least clearance of a body from a plane through the whole swing, and where it is least. */
export function planeClear(bed: Bed, body: Body, plane: PlaneName): Extreme {
  return cornersOf(bed, body)
    .map((arm) => least(PLANES[plane](bed, arm)))
    .reduce((a, b) => (b.value < a.value ? b : a));
}

/** Farthest that a body comes from the wall. */
export function farthest(bed: Bed, body: Body): Extreme {
  return cornersOf(bed, body)
    .map((arm) => most(PLANES.wall(bed, arm)))
    .reduce((a, b) => (b.value > a.value ? b : a));
}

/** First touch of a body that goes beyond the plane; null when it stays clear. */
export function planeContact(
  bed: Bed,
  body: Body,
  plane: PlaneName,
): { readonly angle: Deg; readonly place: Point } | null {
  let first: { angle: Deg; arm: Arm } | null = null;
  for (const arm of cornersOf(bed, body)) {
    const wave = PLANES[plane](bed, arm);
    // A touch is no hit.
    if (least(wave).value >= -SAME_LENGTH) continue;
    const angle = firstBelow(wave);
    if (angle !== null && (first === null || angle < first.angle)) first = { angle, arm };
  }
  return first && { angle: first.angle, place: swing(bed, first.arm, first.angle) };
}
