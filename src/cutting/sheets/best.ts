import { DUST } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { type Budget, budgetOf } from '../budget.ts';
import { bestLimited } from './limited.ts';
import { bestUnlimited, valueTable } from './unlimited.ts';
import type { ValuedLayout, ValuedType, Way } from './valued.ts';

const NODES = 20_000_000;

interface Size {
  readonly w: Mm;
  readonly h: Mm;
}

/**
 * The most valuable guillotine pattern of one sheet, any number of stages, no kerf. Without limits on
 * copies by a dynamic program over discretization points; with limits by a best-first search that is exact
 * unless `nodes` end first.
 */
export function bestGuillotine(
  sheet: Size,
  types: readonly ValuedType[],
  options: { readonly turn: boolean; readonly nodes?: number | undefined },
): ValuedLayout {
  const ways = types.flatMap((t, type): Way[] => {
    const straight: Way = { type, w: t.w, h: t.h, turned: false };
    return options.turn && t.w !== t.h ? [straight, { type, w: t.h, h: t.w, turned: true }] : [straight];
  });
  return bestPattern(sheet, types, ways, { cells: Infinity, budget: budgetOf(options.nodes ?? NODES) });
}

/**
 * The same for types that lie in ways of their own; those that are too large for the sheet are passed over.
 *
 * @param limits `cells`: blocks that may be valued before the search, which does without beyond that, and
 *   then takes types without a limit as often as they fit; `budget`: joins of two blocks that may be tried
 */
export function bestPattern(
  sheet: Size,
  types: readonly ValuedType[],
  ways: readonly Way[],
  limits: { readonly cells: number; readonly budget: Budget },
): ValuedLayout {
  const fitting = ways.filter((o) => o.w <= sheet.w + DUST && o.h <= sheet.h + DUST);
  const table = valueTable(sheet, types, fitting, limits.cells);
  const limited = types.some((t) => t.max !== undefined);
  return table && !limited
    ? bestUnlimited(table, fitting)
    : bestLimited(sheet, types, fitting, table, limits.budget);
}
