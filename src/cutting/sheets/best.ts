import type { Mm } from '../../measure/units.ts';
import { budgetOf } from '../budget.ts';
import { bestLimited } from './limited.ts';
import { bestUnlimited } from './unlimited.ts';

/** A kind of rectangle and what one of it is worth. */
export interface ValuedType {
  readonly w: Mm;
  readonly h: Mm;
  readonly value: number;
  /** Most copies; absent: as many as there is room for. */
  readonly max?: number | undefined;
}

export interface ValuedPlacement {
  readonly type: number;
  readonly x: Mm;
  readonly y: Mm;
  readonly w: Mm;
  readonly h: Mm;
  readonly turned: boolean;
}

export interface ValuedLayout {
  readonly value: number;
  readonly layout: readonly ValuedPlacement[];
  /** No guillotine pattern is worth more. */
  readonly proved: boolean;
}

/** An orientation in which a type fits the sheet. */
export interface Way {
  readonly type: number;
  readonly w: Mm;
  readonly h: Mm;
  readonly turned: boolean;
}

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
