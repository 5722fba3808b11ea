import type { Check } from '../../check/check.ts';
import { isSheet } from '../../design/made.ts';
import { surrounds } from '../../geometry/box.ts';
import { intersect, union } from '../../geometry/clip.ts';
import { areaOf, boxesMeet } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { LaidPart } from '../laid.ts';
import { LEAST_CARRIED } from '../place/carrier.ts';
import type { Placing } from '../place/place.ts';
import { fillsItsBox } from '../place/support.ts';
import type { CheckContext } from './context.ts';

const sameHeight = (a: Mm, b: Mm): boolean => Math.abs(a - b) <= SAME_LENGTH;

/** A part whose region is just its box. */
const isBoard = (laid: LaidPart): boolean =>
  (laid.kind === 'strip' && (laid.spec.lie === 'across' || laid.spec.lie === 'up')) ||
  (isSheet(laid) && laid.spec.shape.form === 'rectangle' && laid.spec.openings.length === 0);

/** Share of the underside (0 to 1) that lies on levels or parts of just its height. */
function supportedShare(
  { laid, bounds }: Placing,
  neighbors: readonly Placing[],
  context: CheckContext,
): number {
  const beneath: Region[] = [];
  for (const level of context.face.levels) {
    if (!sameHeight(level.z, laid.z0) || !boxesMeet(level.box, bounds)) continue;
    if (fillsItsBox(level) && surrounds(level.box, bounds, SAME_LENGTH)) return 1;
    beneath.push(level.region);
  }
  for (const other of neighbors) {
    // A painted shape carries nothing.
    if (!sameHeight(other.laid.z1, laid.z0) || other.laid.z1 - other.laid.z0 <= SAME_LENGTH) continue;
    if (isBoard(other.laid) && surrounds(other.bounds, bounds, SAME_LENGTH)) return 1;
    beneath.push(other.laid.region);
  }
  const area = areaOf(laid.region);
  if (beneath.length === 0 || area <= 0) return 0;
  const ground = beneath.length === 1 ? pick(beneath, 0) : union(beneath);
  return Math.min(1, areaOf(intersect(laid.region, ground)) / area);
}

/** Parts that lie on too little. */
export function unsupported(placing: Placing, neighbors: readonly Placing[], context: CheckContext): Check[] {
  const share = supportedShare(placing, neighbors, context);
  if (share >= LEAST_CARRIED) return [];
  const { laid, bounds } = placing;
  return [
    {
      code: 'part.unsupported',
      severity: 'warning',
      parts: [laid.id],
      at: { x: bounds.x + bounds.w / 2, y: bounds.y + bounds.h / 2 },
      figures: { share, need: LEAST_CARRIED },
    },
  ];
}
