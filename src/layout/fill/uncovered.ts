import type { Check } from '../../check/check.ts';
import type { Fill } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { inches, type Mm } from '../../measure/units.ts';

/**
 * A batten lies on each of the boards beside its joint by at least this: boards half an inch apart under a batten of an inch
 * and a half, as siding is laid. Boards shrink away from under less.
 */
const LEAST_LAP: Mm = inches(1 / 2);

/** Battens too narrow to cover the joints of their boards. */
export function uncovered(
  { id, pattern, gap }: Pick<Fill, 'id' | 'pattern' | 'gap'>,
  widthOf: (stock: string) => Mm,
): Check[] {
  if (pattern.form !== 'battened') return [];
  const width = widthOf(pattern.stock);
  const need = gap + 2 * LEAST_LAP;
  if (width <= 0 || width >= need - SAME_LENGTH) return [];
  const figures = { width_mm: width, need_mm: need, gap_mm: gap, lap_mm: LEAST_LAP };
  return [{ code: 'fill.uncovered', severity: 'warning', parts: [id], figures }];
}
