import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';

/**
 * Sheets are cut without a thought for the kerf: every piece and every sheet is made wider and higher by
 * one kerf, which says the same. A piece and the kerf beyond it then fill whole blocks.
 */

/** A way in which an item may lie. */
export interface Turn {
  readonly w: Mm;
  readonly h: Mm;
  readonly turned: boolean;
}

/** Pieces that are alike for cutting. */
export interface SheetItem {
  readonly ways: readonly Turn[];
  readonly count: number;
  readonly area: number;
}

/** A kind of sheet, bought or owned. */
export interface SheetBin {
  readonly w: Mm;
  readonly h: Mm;
  readonly weight: number;
  readonly limit: number;
}

export interface SheetProblem {
  /** Largest area first. */
  readonly items: readonly SheetItem[];
  readonly bins: readonly SheetBin[];
  roundUp(weight: number): number;
}

/**
 * A block of sheet: cut in two edge to edge, or a leaf that holds an item or nothing. `rip` runs along x
 * and puts `low` beneath `high`; `cross` runs along y and puts `low` to the left.
 */
export interface Block {
  readonly x: Mm;
  readonly y: Mm;
  readonly w: Mm;
  readonly h: Mm;
  readonly item: number;
  readonly turned: boolean;
  readonly cut: { readonly kind: 'rip' | 'cross'; readonly low: Block; readonly high: Block } | null;
}

/** One sheet as it is cut up. */
export interface SheetLoad {
  readonly bin: number;
  readonly root: Block;
}

export interface SheetPlan {
  readonly loads: readonly SheetLoad[];
  readonly weight: number;
  /** Area of the largest block left over. */
  readonly rest: number;
  /** Number of cuts; a sheet whose first cut is not a rip counts some more. */
  readonly labor: number;
}

/** Thinner than this there is nothing left to cut off. */
export const THIN: Mm = 1e-6;

export const leaf = (x: Mm, y: Mm, w: Mm, h: Mm): Block => ({
  x,
  y,
  w,
  h,
  item: -1,
  turned: false,
  cut: null,
});

export function leaves(block: Block): Block[] {
  return block.cut === null ? [block] : [...leaves(block.cut.low), ...leaves(block.cut.high)];
}

/** How many of each item are cut from sheets. */
export function countsOn(p: SheetProblem, loads: readonly SheetLoad[]): number[] {
  const counts = p.items.map(() => 0);
  for (const { root } of loads)
    for (const { item } of leaves(root)) if (item >= 0) counts[item] = at(counts, item) + 1;
  return counts;
}

/** The area of so many of each item. */
export const areaOf = (p: SheetProblem, counts: readonly number[]): number =>
  counts.reduce((sum, n, i) => sum + n * pick(p.items, i).area, 0);

export const largestRest = (loads: readonly SheetLoad[]): number =>
  Math.max(0, ...loads.flatMap((l) => leaves(l.root).map((b) => (b.item < 0 ? b.w * b.h : 0))));
