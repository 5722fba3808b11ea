import { isBought, isLettered, isPaint } from '../../design/made.ts';
import type { LaidPart, Layout } from '../../layout/laid.ts';
import { pick } from '../../list/at.ts';
import { grouped } from '../../list/grouped.ts';
import { keptBy } from '../../list/keptBy.ts';

/** What is drawn before what: wood by its height, letters without a board on it, over both what is bought. */
const WOOD = 0;
const LETTERS = 1;
const BOUGHT = 2;

/** What of a part says how it lies among others, but for where it lies. */
const standsAlike = (a: LaidPart, b: LaidPart | undefined): boolean =>
  a === b ||
  (a.id === b?.id && a.part === b.part && a.on === b.on && a.z1 === b.z1 && rankAlone(a) === rankAlone(b));

const rankAlone = (part: LaidPart): number =>
  isBought(part) ? BOUGHT : isLettered(part) && isPaint(part) ? LETTERS : WOOD;

/** Numbers of parts in the order in which they are drawn. */
function orderOf(parts: readonly LaidPart[]): readonly number[] {
  const byId = new Map(parts.map((part) => [part.id, part]));
  const ranks = new Map<string, number>();
  const rankOf = (part: LaidPart): number => {
    const known = ranks.get(part.id);
    if (known !== undefined) return known;
    // Parts may be said to lie on each other in a ring.
    ranks.set(part.id, WOOD);
    const under = byId.get(part.on);
    const rank = Math.max(rankAlone(part), under ? rankOf(under) : WOOD);
    ranks.set(part.id, rank);
    return rank;
  };
  const groups = [...grouped(parts.keys(), (i) => pick(parts, i).part).values()].map((numbers) => ({
    numbers,
    rank: rankOf(pick(parts, numbers[0])),
    top: Math.max(...numbers.map((i) => pick(parts, i).z1)),
  }));
  groups.sort((a, b) => a.rank - b.rank || (a.rank === LETTERS ? 0 : a.top - b.top));
  return groups.flatMap(({ numbers }) => numbers);
}

/** The last order: in most steps of a drag parts move within it. */
let last: { readonly parts: readonly LaidPart[]; readonly order: readonly number[] } | null = null;

/**
 * Laid parts as they are drawn, from what is deepest to what the room sees before all: of two that meet, the one that
 * stands out farther covers the other, and at one height the later one, as the plan has what is seen of each. Letters
 * without a board lie on all wood, at whatever height, and beneath what is bought. Pieces of one part stay together.
 */
export const fromBelow = keptBy(({ parts }: Pick<Layout, 'parts'>): readonly LaidPart[] => {
  const before = last?.parts.length === parts.length ? last : null;
  const order =
    before && parts.every((part, i) => standsAlike(part, before.parts[i])) ? before.order : orderOf(parts);
  last = { parts, order };
  return order.map((i) => pick(parts, i));
});
