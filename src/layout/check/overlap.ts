import type { Check } from '../../check/check.ts';
import { isBars, isBoards, isPaint } from '../../design/made.ts';
import { intersect } from '../../geometry/clip.ts';
import { areaOf, centroidOf } from '../../geometry/region.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { LaidPart } from '../laid.ts';
import type { Placing } from '../place/place.ts';

/** Square millimeters in common that are rounding along a shared edge and no overlap. */
const TOUCHING_MM2 = 1;

/** Strips and runs meet in joints, which are joinery's to judge. */

function sharesHeight(a: LaidPart, b: LaidPart): boolean {
  // A painted shape has no height: it is in the way only where it would be inside of something.
  return Math.min(a.z1, b.z1) - Math.max(a.z0, b.z0) > SAME_LENGTH || isInside(a, b) || isInside(b, a);
}

const isInside = (painted: LaidPart, body: LaidPart): boolean =>
  isPaint(painted) && painted.z0 > body.z0 + SAME_LENGTH && painted.z0 < body.z1 - SAME_LENGTH;

/** Two bodies in the same place. Each pair is reported once, with the lesser id. */
export function overlaps({ laid }: Placing, neighbors: readonly Placing[]): Check[] {
  const found: Check[] = [];
  for (const { laid: other } of neighbors) {
    if (other.id < laid.id || !sharesHeight(laid, other)) continue;
    if (isBars(laid) && isBars(other)) continue;
    // Pieces of one fill are cut out of one area.
    if (isBoards(laid) && laid.part === other.part) continue;
    const common = intersect(laid.region, other.region);
    const area = areaOf(common);
    if (area <= TOUCHING_MM2) continue;
    found.push({
      code: 'part.overlap',
      severity: 'error',
      parts: [laid.id, other.id],
      at: centroidOf(common),
      figures: { area_m2: area / 1e6 },
    });
  }
  return found;
}
