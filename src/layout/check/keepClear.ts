import type { KeepClear } from '../../bed/bed.ts';
import type { Check } from '../../check/check.ts';
import { intersect } from '../../geometry/clip.ts';
import { boxesMeet, boxOf, centroidOf, regionOfBox } from '../../geometry/region.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { LaidPart } from '../laid.ts';
import type { Placing } from '../place/place.ts';
import type { CheckContext } from './context.ts';

/** Paint is in nobody's way; what lies above the top of the thing passes over it. */
const isInTheWay = (laid: LaidPart, clear: KeepClear): boolean =>
  laid.z1 - laid.z0 > SAME_LENGTH && laid.z0 < Math.max(clear.height, SAME_LENGTH) - SAME_LENGTH / 2;

/** Parts over hinges, legs, latch and handles. How far: the lesser side of what is covered. */
export function onKeepClear({ laid, bounds }: Placing, { keepClears }: CheckContext): Check[] {
  const found: Check[] = [];
  for (const clear of keepClears) {
    if (!isInTheWay(laid, clear) || !boxesMeet(clear.box, bounds)) continue;
    const common = intersect(laid.region, regionOfBox(clear.box));
    const covered = boxOf(common);
    if (!covered) continue;
    const over = Math.min(covered.w, covered.h);
    if (over <= SAME_LENGTH) continue;
    found.push({
      code: 'part.keep-clear',
      severity: 'error',
      parts: [laid.id],
      at: centroidOf(common),
      figures: { keep_clear: clear.id, reason: clear.why, over_mm: over },
    });
  }
  return found;
}
