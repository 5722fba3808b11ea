import type { Design } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import type { CutBoard } from '../result.ts';

/** A usable stretch of a board, from its left end. */
export interface Stretch {
  readonly from: Mm;
  readonly to: Mm;
}

/**
 * The bad stretches of a board of this length as they are kept clear of: whichever end was entered first,
 * and no farther than the board goes.
 */
export function defectsOn(length: Mm, defects: readonly Stretch[]): Stretch[] {
  return defects
    .map(({ from, to }) => ({ from: Math.min(from, to), to: Math.min(Math.max(from, to), length) }))
    .filter((d) => d.to > d.from)
    .sort((a, b) => a.from - b.from || a.to - b.to);
}

/** What of a board is not used: the end trim of a bought one, the defects of an owned one. */
export function unusedOf(
  { length, owned }: CutBoard,
  { owned: boards, shop }: Pick<Design, 'owned' | 'shop'>,
): Stretch[] {
  if (owned !== null)
    return boards.flatMap((one) => (one.id === owned ? defectsOn(length, one.defects) : []));
  const trim = shop.endTrim;
  if (trim === 0) return [];
  return [
    { from: 0, to: trim },
    { from: length - trim, to: length },
  ];
}

/**
 * Stretches left between the trimmed ends and the defects. A defect narrower than the widest kerf counts
 * as that kerf: the blade that frees one neighbor must not reach into the other.
 */
export function stretches(length: Mm, trim: Mm, defects: readonly Stretch[], kerf: Mm): Stretch[] {
  const found: Stretch[] = [];
  const end = length - trim;
  let from = trim;
  for (const d of defectsOn(length, defects)) {
    const to = Math.min(d.from, end);
    if (to - from > SAME_LENGTH) found.push({ from, to });
    from = Math.max(from, d.to, d.from > trim ? d.from + kerf : d.to);
  }
  if (end - from > SAME_LENGTH) found.push({ from, to: end });
  return found;
}
