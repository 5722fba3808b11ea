import { isBoards } from '../../design/made.ts';
import { neighborsOf } from '../../geometry/meeting.ts';
import { boxesMeet } from '../../geometry/region.ts';
import { pick } from '../../list/at.ts';
import type { Placing } from '../place/place.ts';

/**
 * Pieces of one fill are cut out of one area, and none lies on another at its own height: no check asks one of them
 * about another, and each has many beside it.
 */
const apart = ({ laid: a }: Placing, { laid: b }: Placing): boolean =>
  a.part === b.part && a.z0 === b.z0 && isBoards(a) && isBoards(b);

/** For each placing, by number those that it meets and that a check may ask it about. */
export const neighborsIn = (placings: readonly Placing[]): number[][] =>
  neighborsOf(
    placings.map(({ bounds }) => bounds),
    0,
    (i, j) => apart(pick(placings, i), pick(placings, j)),
  );

/** The neighbors after some placings moved, from those before. Lists that are as they were are the same lists. */
export function neighborsAfter(
  placings: readonly Placing[],
  before: readonly (readonly number[])[],
  moved: readonly number[],
): (readonly number[])[] {
  const now = [...before];
  const inMotion = new Set(moved);
  for (const i of moved) {
    const own = pick(placings, i);
    const list: number[] = [];
    placings.forEach((other, j) => {
      if (i !== j && boxesMeet(other.bounds, own.bounds) && !apart(own, other)) list.push(j);
    });
    for (const j of list) if (!inMotion.has(j)) now[j] = withNumber(pick(now, j), i);
    const is = new Set(list);
    for (const j of pick(before, i)) if (!inMotion.has(j) && !is.has(j)) now[j] = without(pick(now, j), i);
    now[i] = list;
  }
  return now;
}

function withNumber(list: readonly number[], i: number): readonly number[] {
  if (list.includes(i)) return list;
  const at = list.findIndex((j) => j > i);
  return at < 0 ? [...list, i] : [...list.slice(0, at), i, ...list.slice(at)];
}

const without = (list: readonly number[], i: number): readonly number[] => list.filter((j) => j !== i);
