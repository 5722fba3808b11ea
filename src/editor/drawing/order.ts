import { isBought, isLettered, isPaint } from '../../design/made.ts';
import type { LaidPart, Layout } from '../../layout/laid.ts';
import { pick } from '../../list/at.ts';
import { grouped } from '../../list/grouped.ts';
import { keptBy } from '../../list/keptBy.ts';

/** What is drawn before what: wood by its height, letters without a board on it, over both what is bought. */
const WOOD = 0;
const LETTERS = 1;
const BOUGHT = 2;

/**
 * Laid parts as they are drawn, from what is deepest to what the room sees before all: of two that meet, the one that
 * stands out farther covers the other, and at one height the later one, as the plan has what is seen of each. Letters
 * without a board lie on all wood, at whatever height, and beneath what is bought. Pieces of one part stay together.
 */
export const fromBelow = keptBy(({ parts }: Pick<Layout, 'parts'>): readonly LaidPart[] => {
  const byId = new Map(parts.map((part) => [part.id, part]));
  const ranks = new Map<string, number>();
  const rankOf = (part: LaidPart): number => {
    const known = ranks.get(part.id);
    if (known !== undefined) return known;
    // Parts may be said to lie on each other in a ring.
    ranks.set(part.id, WOOD);
    const under = byId.get(part.on);
    const own = isBought(part) ? BOUGHT : isLettered(part) && isPaint(part) ? LETTERS : WOOD;
    const rank = Math.max(own, under ? rankOf(under) : WOOD);
    ranks.set(part.id, rank);
    return rank;
  };
  const groups = [...grouped(parts, ({ part }) => part).values()].map((pieces) => ({
    pieces,
    rank: rankOf(pick(pieces, 0)),
    top: Math.max(...pieces.map(({ z1 }) => z1)),
  }));
  groups.sort((a, b) => a.rank - b.rank || (a.rank === LETTERS ? 0 : a.top - b.top));
  return groups.flatMap(({ pieces }) => pieces);
});
