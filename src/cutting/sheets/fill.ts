import { DUST } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Budget } from '../budget.ts';
import {
  type Block,
  largestRest,
  leaf,
  type SheetLoad,
  type SheetPlan,
  type SheetProblem,
  THIN,
  type Turn,
} from './problem.ts';

/** Score of a piece in a block; the least is taken. */
const FITS = {
  area: (b: Grown, t: Turn) => b.w * b.h - t.w * t.h,
  short: (b: Grown, t: Turn) => Math.min(b.w - t.w, b.h - t.h),
  long: (b: Grown, t: Turn) => Math.max(b.w - t.w, b.h - t.h),
};

/** Whether the first cut past a piece is a rip. */
const CUTS = {
  /** The larger of the two rests stays as large as it can. */
  keep: (b: Grown, t: Turn) => b.w * (b.h - t.h) >= (b.w - t.w) * b.h,
  split: (b: Grown, t: Turn) => b.w * (b.h - t.h) < (b.w - t.w) * b.h,
  short: (b: Grown, t: Turn) => b.w - t.w < b.h - t.h,
  rip: () => true,
  cross: () => false,
};

/** Which block takes a piece, and which way the rest of it is cut. */
export interface Manner {
  readonly fit: keyof typeof FITS;
  readonly cut: keyof typeof CUTS;
}

export const MANNERS: readonly Manner[] = (Object.keys(FITS) as Manner['fit'][]).flatMap((fit) =>
  (Object.keys(CUTS) as Manner['cut'][]).map((cut) => ({ fit, cut })),
);

/** A block while the tree still grows. */
interface Grown {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  item: number;
  turned: boolean;
  cut: { kind: 'rip' | 'cross'; low: Grown; high: Grown } | null;
}

const grown = (x: number, y: number, w: number, h: number): Grown => ({
  x,
  y,
  w,
  h,
  item: -1,
  turned: false,
  cut: null,
});

/** A filled sheet and what it holds. */
export interface Filled {
  readonly root: Block;
  readonly counts: readonly number[];
  readonly area: number;
}

/** Cuts `size` off a leaf; the leaf itself when nothing would be left. */
function part(block: Grown, kind: 'rip' | 'cross', size: number, rests: Grown[]): Grown {
  const { x, y, w, h } = block;
  const rip = kind === 'rip';
  if ((rip ? h : w) - size <= THIN) return block;
  const low = rip ? grown(x, y, w, size) : grown(x, y, size, h);
  const high = rip ? grown(x, y + size, w, h - size) : grown(x + size, y, w - size, h);
  block.cut = { kind, low, high };
  rests.push(high);
  return low;
}

function place(free: readonly Grown[], block: Grown, item: number, turn: Turn, cut: Manner['cut']): Grown[] {
  const rests: Grown[] = [];
  const rip = CUTS[cut](block, turn);
  const first = rip ? part(block, 'rip', turn.h, rests) : part(block, 'cross', turn.w, rests);
  const last = rip ? part(first, 'cross', turn.w, rests) : part(first, 'rip', turn.h, rests);
  last.item = item;
  last.turned = turn.turned;
  return [...free.filter((b) => b !== block), ...rests];
}

/**
 * Fills one sheet: the pieces come in the given order, each goes into the block that suits it best, and
 * one that fits nowhere is passed over. Null when the budget ends.
 */
export function fillSheet(
  p: SheetProblem,
  bin: number,
  order: readonly number[],
  manner: Manner,
  budget: Budget,
): Filled | null {
  const score = FITS[manner.fit];
  const { w, h } = pick(p.bins, bin);
  const root = grown(0, 0, w, h);
  let free: Grown[] = [root];
  const counts = p.items.map(() => 0);
  let area = 0;
  let passed = -1;
  for (const item of order) {
    // Copies of a piece that found no room find none either.
    if (item === passed) continue;
    if (!budget.spend()) return null;
    let best: { block: Grown; turn: Turn } | null = null;
    let least = Infinity;
    const { ways, area: size } = pick(p.items, item);
    for (const block of free) {
      for (const turn of ways) {
        if (turn.w > block.w + THIN || turn.h > block.h + THIN) continue;
        const s = score(block, turn);
        if (s < least - DUST) {
          least = s;
          best = { block, turn };
        }
      }
    }
    if (best === null) {
      passed = item;
      continue;
    }
    free = place(free, best.block, item, best.turn, manner.cut);
    counts[item] = at(counts, item) + 1;
    area += size;
  }
  return { root: frozen(root), counts, area };
}

const frozen = (b: Grown): Block =>
  b.cut === null
    ? { ...leaf(b.x, b.y, b.w, b.h), item: b.item, turned: b.turned }
    : {
        ...leaf(b.x, b.y, b.w, b.h),
        cut: { kind: b.cut.kind, low: frozen(b.cut.low), high: frozen(b.cut.high) },
      };

/** A whole sheet cut across first is as unhandy as this many cuts. */
const CROSS_FIRST = 2;

const cutsIn = (b: Block): number => (b.cut === null ? 0 : 1 + cutsIn(b.cut.low) + cutsIn(b.cut.high));

export const planOf = (p: SheetProblem, loads: readonly SheetLoad[]): SheetPlan => ({
  loads,
  weight: loads.reduce((sum, l) => sum + pick(p.bins, l.bin).weight, 0),
  rest: largestRest(loads),
  labor: loads.reduce(
    (sum, { root }) => sum + cutsIn(root) + (root.cut?.kind === 'cross' ? CROSS_FIRST : 0),
    0,
  ),
});
