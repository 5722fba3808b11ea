import type { Check } from '../../check/check.ts';
import { pick } from '../../list/at.ts';
import type { Placing } from '../place/place.ts';
import type { CheckContext } from './context.ts';
import { onKeepClear } from './keepClear.ts';
import { neighborsAfter, neighborsIn } from './neighbors.ts';
import { offFace } from './offFace.ts';
import { overlaps } from './overlap.ts';
import { unsupported } from './unsupported.ts';

/** What was found about each placing, and its neighbors by number. */
export interface Checking {
  readonly placings: readonly Placing[];
  readonly context: CheckContext;
  readonly neighbors: readonly (readonly number[])[];
  readonly checks: readonly (readonly Check[])[];
}

/** Checks of every laid part against the face, its keep-clears and its neighbors. */
export function checkPlacings(
  placings: readonly Placing[],
  context: CheckContext,
  before: Checking | undefined,
): Checking {
  const neighbors = neighborsIn(placings);
  const known = before && sameContext(before.context, context) ? before : undefined;
  const numbers = new Map<Placing, number>();
  known?.placings.forEach((placing, i) => {
    numbers.set(placing, i);
  });
  const checks = placings.map((placing, i) => {
    const around = pick(neighbors, i).map((j) => pick(placings, j));
    const at = numbers.get(placing);
    if (known && at !== undefined) {
      const was = pick(known.neighbors, at);
      if (was.length === around.length && was.every((j, k) => known.placings[j] === around[k]))
        return pick(known.checks, at);
    }
    return checkPlacing(placing, around, context);
  });
  return { placings, context, neighbors, checks };
}

/** Past this share of all placings a sweep over all of them is quicker than looking around each. */
const FEW = 1 / 8;

/** Checks again what some placings, by number, have to do with, where all others are as they were. */
export function checkSome(
  placings: readonly Placing[],
  context: CheckContext,
  before: Checking,
  moved: readonly number[],
): Checking {
  if (!sameContext(before.context, context) || moved.length > placings.length * FEW)
    return checkPlacings(placings, context, before);
  if (moved.length === 0) return before;
  const neighbors = neighborsAfter(placings, before.neighbors, moved);
  const concerned = new Set(moved);
  for (const i of moved) {
    for (const j of pick(before.neighbors, i)) concerned.add(j);
    for (const j of pick(neighbors, i)) concerned.add(j);
  }
  const checks = [...before.checks];
  for (const i of concerned) {
    const placing = placings[i];
    const around = pick(neighbors, i).map((j) => pick(placings, j));
    if (placing) checks[i] = checkPlacing(placing, around, context);
  }
  return { placings, context, neighbors, checks };
}

const sameContext = (a: CheckContext, b: CheckContext): boolean =>
  a.face === b.face && a.keepClears === b.keepClears;

const checkPlacing = (
  placing: Placing,
  neighbors: readonly Placing[],
  context: CheckContext,
): readonly Check[] => [
  ...offFace(placing, context),
  ...unsupported(placing, neighbors, context),
  ...overlaps(placing, neighbors),
  ...onKeepClear(placing, context),
];
