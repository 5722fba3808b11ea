import type { Design } from '../../../design/schema.ts';
import { type Moved, whatFits, whatMoved } from '../../../layout/compare.ts';
import { type Shown, shownFrom } from '../../document/shown.ts';

export interface BedChange {
  readonly bed: Design['bed'];
  /** The design on it. */
  readonly shown: Shown;
  readonly moved: readonly Moved[];
  /** Parts that are cut otherwise where they are. */
  readonly fitted: readonly string[];
  /** Checks that the change would bring. */
  readonly newChecks: number;
}

/** What another bed would do to the layout. */
export function bedChange(now: Shown, bed: Design['bed']): BedChange {
  const before = now.layout;
  const shown = shownFrom({ ...now.design, bed }, undefined, now);
  const after = shown.layout;
  const known = new Set(before.checks.map((c) => `${c.code}|${c.parts.join()}`));
  const newChecks = after.checks.filter((c) => !known.has(`${c.code}|${c.parts.join()}`)).length;
  return { bed, shown, moved: whatMoved(before, after), fitted: whatFits(before, after), newChecks };
}
