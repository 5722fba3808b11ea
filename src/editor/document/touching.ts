import { liveFacts } from '../../design/job/record.ts';
import { type There, type Touched, touchedBy } from '../../job/touched.ts';
import { createSawing, type Sawing } from '../../plan/sawing.ts';
import type { Shown } from './shown.ts';

/** Tells what a change touches of what is done. It brings the joinery: fetched where something is done. */
export interface Touching {
  readonly of: (before: Shown, after: Shown) => readonly Touched[];
  readonly joined: Sawing;
}

export function createTouching(): Touching {
  const joined = createSawing();
  const there = (shown: Shown): There => ({
    facts: liveFacts(shown.design.job),
    ...{ parts: shown.layout.parts, pieces: joined(shown).pieces },
    ...{ stocks: shown.stocks, finishes: shown.design.finishes },
  });
  return {
    joined,
    of: (before, after) =>
      liveFacts(before.design.job).length === 0 ? [] : touchedBy(there(before), there(after)),
  };
}
