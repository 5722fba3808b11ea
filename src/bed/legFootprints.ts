import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import type { Bed, KeepClear } from './bed.ts';
import type { Face } from './face.ts';

/** Least clear width the two legs leave between them; negative: they overlap or stand off the face. */
export function betweenLegs(width: Mm, { section, fromSide }: Bed['legs']): Mm {
  return width - 2 * (fromSide + section);
}

/**
 * The places on the face that the legs take: two squares of the leg's section, set back from the far end,
 * away from the pivot, and from both sides. None where the legs stand beside the show area, or where there
 * is no room for both.
 *
 * Ids are `bed:leg-left` and `bed:leg-right`, which no design can use; languages name them by these ids.
 */
export function legFootprints(face: Pick<Face, 'width' | 'height'>, bed: Bed): KeepClear[] {
  const { where, length, section, fromEnd, fromSide } = bed.legs;
  const y = face.height - fromEnd - section;
  if (where === 'beside' || betweenLegs(face.width, bed.legs) < -SAME_LENGTH || y < -SAME_LENGTH) return [];
  const leg = (side: 'left' | 'right', name: string, x: Mm): KeepClear => ({
    id: `bed:leg-${side}`,
    name,
    why: 'leg',
    box: { x, y, w: section, h: section },
    height: length,
  });
  return [leg('left', 'Left leg', fromSide), leg('right', 'Right leg', face.width - fromSide - section)];
}

/** All places on the face that must stay free: those of the design, and those of the legs. */
export function allKeepClears(
  own: readonly KeepClear[],
  face: Pick<Face, 'width' | 'height'>,
  bed: Bed,
): readonly KeepClear[] {
  const legs = legFootprints(face, bed);
  return legs.length === 0 ? own : [...own, ...legs];
}
