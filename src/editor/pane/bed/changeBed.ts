import type { Design } from '../../../design/schema.ts';
import { type Moved, whatMoved } from '../../../layout/compare.ts';
import { layoutOf } from '../../document/derive.ts';

export interface BedChange {
  readonly bed: Design['bed'];
  readonly moved: readonly Moved[];
  /** Checks that the change would bring. */
  readonly newChecks: number;
}

/** What another bed would do to the layout. */
export function bedChange(design: Design, bed: Design['bed']): BedChange {
  const before = layoutOf(design);
  const after = layoutOf({ ...design, bed });
  const known = new Set(before.checks.map((c) => `${c.code}|${c.parts.join()}`));
  const newChecks = after.checks.filter((c) => !known.has(`${c.code}|${c.parts.join()}`)).length;
  return { bed, moved: whatMoved(before, after), newChecks };
}
