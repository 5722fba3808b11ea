import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Placing } from '../place/place.ts';

/** For each placing, by number those whose bounds meet its own, in rising order. Sweep along x. */
export function neighborsOf(placings: readonly Placing[]): number[][] {
  const order = placings.map((_, i) => i);
  order.sort((a, b) => placings[a]!.bounds.x - placings[b]!.bounds.x || a - b);
  const found: number[][] = placings.map(() => []);
  let open: number[] = [];
  for (const i of order) {
    const { bounds } = placings[i]!;
    open = open.filter((j) => reaches(placings[j]!.bounds, bounds));
    for (const j of open) {
      if (apartInHeight(placings[j]!.bounds, bounds)) continue;
      found[i]!.push(j);
      found[j]!.push(i);
    }
    open.push(i);
  }
  return found.map((list) => list.sort((a, b) => a - b));
}

/** Whether a box reaches along x to one that begins where it begins or later. */
const reaches = (a: Box, b: Box): boolean => a.x + a.w > b.x - SAME_LENGTH;

const apartInHeight = (a: Box, b: Box): boolean =>
  a.y + a.h < b.y - SAME_LENGTH || b.y + b.h < a.y - SAME_LENGTH;

/** The neighbors after some placings moved, from those before. Lists that are as they were are the same lists. */
export function neighborsAfter(
  placings: readonly Placing[],
  before: readonly (readonly number[])[],
  moved: readonly number[],
): (readonly number[])[] {
  const now = [...before];
  const inMotion = new Set(moved);
  for (const i of moved) {
    const { bounds } = placings[i]!;
    const list: number[] = [];
    placings.forEach(({ bounds: other }, j) => {
      if (i === j || apartInHeight(other, bounds)) return;
      const first = other.x < bounds.x || (other.x === bounds.x && j < i);
      if (first ? reaches(other, bounds) : reaches(bounds, other)) list.push(j);
    });
    for (const j of list) if (!inMotion.has(j)) now[j] = withNumber(now[j] ?? [], i);
    const is = new Set(list);
    for (const j of before[i] ?? []) if (!inMotion.has(j) && !is.has(j)) now[j] = without(now[j] ?? [], i);
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
