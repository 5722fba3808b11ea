import type { Check } from '../check/check.ts';
import type { Design } from '../design/schema.ts';
import type { Checking } from './check/checks.ts';
import type { Placement } from './place/place.ts';
import type { JudgedRule } from './states.ts';

interface Checked {
  readonly judged: readonly JudgedRule[];
  readonly placement: Placement;
  readonly checking: Checking;
}

/** All that was found, stage by stage. */
export function allChecks({ judged, placement, checking }: Checked): Check[] {
  const found: Check[] = [];
  // Most have none, and each step of a drag asks all of them.
  const add = (checks: readonly Check[]) => {
    if (checks.length > 0) for (const check of checks) found.push(check);
  };
  for (const { checks } of judged) add(checks);
  add(placement.checks);
  for (const { checks } of placement.placed) add(checks);
  for (const checks of checking.checks) add(checks);
  return found;
}

interface Finishes {
  readonly finishes: Design['finishes'];
  readonly finishIds: ReadonlySet<string>;
}

/** Ids of the finishes; the same set while they stay the same, so that a change of color places nothing anew. */
export function finishIdsOf(finishes: Design['finishes'], last: Finishes | null): ReadonlySet<string> {
  if (last?.finishes === finishes) return last.finishIds;
  const ids = new Set(finishes.map((finish) => finish.id));
  const same = last?.finishIds.size === ids.size && [...ids].every((id) => last.finishIds.has(id));
  return same ? last.finishIds : ids;
}
