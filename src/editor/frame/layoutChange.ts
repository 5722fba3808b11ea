import type { Design } from '../../design/schema.ts';
import { type Moved, whatFits, whatMoved } from '../../layout/compare.ts';
import { type Shown, shownFrom } from '../document/shown.ts';

/** What another bed, or stock in other sizes, would do to the layout. */
export interface LayoutChange {
  /** The design with it. */
  readonly shown: Shown;
  readonly moved: readonly Moved[];
  /** Parts that are cut otherwise where they are. */
  readonly fitted: readonly string[];
  /** Checks that the change would bring. */
  readonly newChecks: number;
}

export function layoutChange(now: Shown, fields: Partial<Design>): LayoutChange {
  const before = now.layout;
  const shown = shownFrom({ ...now.design, ...fields }, undefined, now);
  const after = shown.layout;
  const known = new Set(before.checks.map((c) => `${c.code}|${c.parts.join()}`));
  const newChecks = after.checks.filter((c) => !known.has(`${c.code}|${c.parts.join()}`)).length;
  return { shown, moved: whatMoved(before, after), fitted: whatFits(before, after), newChecks };
}

/** Whether there is anything to show before it is taken. */
export const changesLayout = ({ moved, fitted }: LayoutChange): boolean => moved.length + fitted.length > 0;
