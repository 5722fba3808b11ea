import type { Mm } from '../../measure/units.ts';
import { budgetOf } from '../budget.ts';
import { bestLimited } from './limited.ts';
import { bestUnlimited } from './unlimited.ts';
import type { ValuedLayout, ValuedType, Way } from './valued.ts';

const NODES = 20_000_000;

/**
 * The most valuable guillotine pattern of one sheet, any number of stages, no kerf. Without limits on
 * copies by a dynamic program over discretization points; with limits by a best-first search that is exact
 * unless `nodes` end first.
 */
export function bestGuillotine(
  sheet: { readonly w: Mm; readonly h: Mm },
  types: readonly ValuedType[],
  options: { readonly turn: boolean; readonly nodes?: number | undefined },
): ValuedLayout {
  const ways = types.flatMap((t, type): Way[] => {
    const straight: Way = { type, w: t.w, h: t.h, turned: false };
    const both =
      options.turn && t.w !== t.h ? [straight, { type, w: t.h, h: t.w, turned: true }] : [straight];
    return both.filter((o) => o.w <= sheet.w && o.h <= sheet.h);
  });
  const limited = types.some((t) => t.max !== undefined);
  return limited
    ? bestLimited(sheet, types, ways, budgetOf(options.nodes ?? NODES))
    : bestUnlimited(sheet, types, ways);
}
