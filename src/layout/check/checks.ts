import type { Check } from '../../check/check.ts';
import type { Placing } from '../place/place.ts';
import type { CheckContext } from './context.ts';
import { onKeepClear } from './keepClear.ts';
import { neighborsOf } from './neighbors.ts';
import { offFace } from './offFace.ts';
import { overlaps } from './overlap.ts';
import { unsupported } from './unsupported.ts';

/** What was found about one part, with all that it was found from. */
export interface Checked {
  readonly placing: Placing;
  readonly neighbors: readonly Placing[];
  readonly context: CheckContext;
  readonly checks: readonly Check[];
}

/** Checks of every laid part against the face, its keep-clears and its neighbors. */
export function checkPlacings(
  placings: readonly Placing[],
  context: CheckContext,
  before: ReadonlyMap<string, Checked> | undefined,
): Map<string, Checked> {
  const found = new Map<string, Checked>();
  const neighbors = neighborsOf(placings);
  placings.forEach((placing, i) => {
    const around = neighbors[i] ?? [];
    const last = before?.get(placing.laid.id);
    const current =
      last !== undefined &&
      last.placing === placing &&
      last.context.face === context.face &&
      last.context.keepClears === context.keepClears &&
      last.neighbors.length === around.length &&
      last.neighbors.every((one, j) => one === around[j]);
    found.set(placing.laid.id, current ? last : checkPlacing(placing, around, context));
  });
  return found;
}

function checkPlacing(placing: Placing, neighbors: readonly Placing[], context: CheckContext): Checked {
  const checks = [
    ...offFace(placing, context),
    ...unsupported(placing, neighbors, context),
    ...overlaps(placing, neighbors),
    ...onKeepClear(placing, context),
  ];
  return { placing, neighbors, context, checks };
}
