import type { Check } from '../../check/check.ts';
import { isBars, isBoards, isLettered, isPaint, type MadeAs } from '../../design/made.ts';
import { intersect } from '../../geometry/clip.ts';
import { areaOf, centroidOf } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { arcsOf, type LaidPart } from '../laid.ts';
import type { Placing } from '../place/place.ts';

/** Square millimeters in common that are rounding along a shared edge and no overlap. */
const TOUCHING_MM2 = 1;

function sharesHeight(a: LaidPart, b: LaidPart): boolean {
  // A painted shape has no height: it is in the way only where it would be inside of something. What
  // letters without a board stand on is painted on whatever is there.
  return Math.min(a.z1, b.z1) - Math.max(a.z0, b.z0) > SAME_LENGTH || isInside(a, b) || isInside(b, a);
}

const isInside = (painted: LaidPart, body: LaidPart): boolean =>
  isPaint(painted) &&
  !isLettered(painted) &&
  painted.z0 > body.z0 + SAME_LENGTH &&
  painted.z0 < body.z1 - SAME_LENGTH;

/**
 * What may overlap of two strips or runs: they meet in joints, which are joinery's to judge, but for heads sawn from
 * sheet, which no joint cuts into.
 */
function apartFromBars(laid: MadeAs<LaidPart, 'bars'>, other: MadeAs<LaidPart, 'bars'>): Region[][] {
  const [own, others] = [arcsOf(laid), arcsOf(other)];
  if (own.length > 0) return [[own, other.region]];
  return others.length > 0 ? [[laid.region, others]] : [];
}

/** Two bodies in the same place. Each pair is reported once, with the lesser id. */
export function overlaps({ laid }: Placing, neighbors: readonly Placing[]): Check[] {
  const found: Check[] = [];
  for (const { laid: other } of neighbors) {
    // Pieces of one fill are cut out of one area. Asked first: each has many others beside it.
    if (isBoards(laid) && laid.part === other.part) continue;
    if (other.id < laid.id || !sharesHeight(laid, other)) continue;
    const areas = isBars(laid) && isBars(other) ? apartFromBars(laid, other) : [[laid.region, other.region]];
    const common = areas.flatMap(([a = [], b = []]) => intersect(a, b));
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
