import type { Check } from '../../check/check.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import type { Placing } from '../place/place.ts';
import type { CheckContext } from './context.ts';

/**
 * A cornice or a plinth may stand over the edge of the face by this much with no more than a note; the
 * swing is checked elsewhere. Common practice, no source: about the projection of a large cornice.
 */
const MOST_OVERHANG: Mm = 100;

/** Parts past the edge of the face: wholly off it is an error, far over it a warning, a little a note. */
export function offFace({ laid, bounds }: Placing, { face }: CheckContext): Check[] {
  const { box } = face;
  const left = box.x - bounds.x;
  const bottom = box.y - bounds.y;
  const right = bounds.x + bounds.w - (box.x + box.w);
  const top = bounds.y + bounds.h - (box.y + box.h);
  const over = Math.max(left, bottom, right, top);
  if (over <= SAME_LENGTH) return [];
  const gone =
    left >= bounds.w - SAME_LENGTH ||
    right >= bounds.w - SAME_LENGTH ||
    bottom >= bounds.h - SAME_LENGTH ||
    top >= bounds.h - SAME_LENGTH;
  const middle = { x: bounds.x + bounds.w / 2, y: bounds.y + bounds.h / 2 };
  const at = {
    x: over === left ? box.x : over === right ? box.x + box.w : middle.x,
    y: over === bottom ? box.y : over === top ? box.y + box.h : middle.y,
  };
  return [
    {
      code: 'part.off-face',
      severity: gone ? 'error' : over > MOST_OVERHANG + SAME_LENGTH ? 'warning' : 'note',
      parts: [laid.id],
      at,
      figures: { over_mm: over },
    },
  ];
}
