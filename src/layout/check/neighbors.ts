import { boxesMeet } from '../../geometry/region.ts';
import { pick } from '../../list/at.ts';
import type { Placing } from '../place/place.ts';

/** The neighbors after some placings moved, from those before. Lists that are as they were are the same lists. */
export function neighborsAfter(
  placings: readonly Placing[],
  before: readonly (readonly number[])[],
  moved: readonly number[],
): (readonly number[])[] {
  const now = [...before];
  const inMotion = new Set(moved);
  for (const i of moved) {
    const { bounds } = pick(placings, i);
    const list: number[] = [];
    placings.forEach(({ bounds: other }, j) => {
      if (i !== j && boxesMeet(other, bounds)) list.push(j);
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
