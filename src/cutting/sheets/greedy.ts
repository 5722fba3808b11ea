import type { Mm } from '../../measure/units.ts';
import { at, pick } from '../at.ts';
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

/** How pieces are put in order, which block takes a piece, and which way the rest of it is cut. */
export interface Manner {
  readonly order: readonly number[];
  readonly fit: keyof typeof FITS;
  readonly cut: keyof typeof CUTS;
  /** Bought sheet to open first. */
  readonly open: number;
}

/** Score of a piece in a block; the least is taken. */
export const FITS = {
  area: (b: Grown, t: Turn) => b.w * b.h - t.w * t.h,
  short: (b: Grown, t: Turn) => Math.min(b.w - t.w, b.h - t.h),
  long: (b: Grown, t: Turn) => Math.max(b.w - t.w, b.h - t.h),
};

/** Whether the first cut past a piece is a rip. */
export const CUTS = {
  /** The larger of the two rests stays as large as it can. */
  keep: (b: Grown, t: Turn) => b.w * (b.h - t.h) >= (b.w - t.w) * b.h,
  split: (b: Grown, t: Turn) => b.w * (b.h - t.h) < (b.w - t.w) * b.h,
  short: (b: Grown, t: Turn) => b.w - t.w < b.h - t.h,
  rip: () => true,
  cross: () => false,
};

/** A block while the tree still grows. */
interface Grown {
  readonly x: Mm;
  readonly y: Mm;
  readonly w: Mm;
  readonly h: Mm;
  item: number;
  turned: boolean;
  cut: { kind: 'rip' | 'cross'; low: Grown; high: Grown } | null;
}

const grown = (x: Mm, y: Mm, w: Mm, h: Mm): Grown => ({ x, y, w, h, item: -1, turned: false, cut: null });

interface Open {
  readonly bin: number;
  readonly root: Grown;
  /** Leaves without an item. */
  free: Grown[];
}

/** Cuts `size` off a leaf; the leaf itself when nothing would be left. */
function part(block: Grown, kind: 'rip' | 'cross', size: Mm, rests: Grown[]): Grown {
  const { x, y, w, h } = block;
  const rip = kind === 'rip';
  if ((rip ? h : w) - size <= THIN) return block;
  const low = rip ? grown(x, y, w, size) : grown(x, y, size, h);
  const high = rip ? grown(x, y + size, w, h - size) : grown(x + size, y, w - size, h);
  block.cut = { kind, low, high };
  rests.push(high);
  return low;
}

function place(sheet: Open, block: Grown, item: number, turn: Turn, cut: Manner['cut']): void {
  const rests: Grown[] = [];
  const rip = CUTS[cut](block, turn);
  const first = rip ? part(block, 'rip', turn.h, rests) : part(block, 'cross', turn.w, rests);
  const last = rip ? part(first, 'cross', turn.w, rests) : part(first, 'rip', turn.h, rests);
  last.item = item;
  last.turned = turn.turned;
  sheet.free = [...sheet.free.filter((b) => b !== block), ...rests];
}

const enters = (t: Turn, w: Mm, h: Mm): boolean => t.w <= w + THIN && t.h <= h + THIN;

/**
 * Places the pieces one by one, each into the best block of any open sheet, and opens another sheet when
 * none has room. Returns null when the budget ran out or a piece fits no sheet that is left.
 */
export function placeAll(
  p: SheetProblem,
  manner: Manner,
  limits: readonly number[],
  budget: Budget,
): SheetPlan | null {
  const score = FITS[manner.fit];
  const sheets: Open[] = [];
  const free = [...limits];
  for (const item of manner.order) {
    const { ways } = pick(p.items, item);
    let best: { sheet: Open; block: Grown; turn: Turn } | null = null;
    let least = Infinity;
    for (const sheet of sheets) {
      for (const block of sheet.free) {
        if (!budget.spend()) return null;
        for (const turn of ways) {
          if (!enters(turn, block.w, block.h)) continue;
          const s = score(block, turn);
          if (s < least - 1e-9) {
            least = s;
            best = { sheet, block, turn };
          }
        }
      }
    }
    if (best === null) {
      const bin = opened(p, ways, free, manner.open);
      if (bin < 0) return null;
      free[bin] = at(free, bin) - 1;
      const { w, h } = pick(p.bins, bin);
      const root = grown(0, 0, w, h);
      const sheet: Open = { bin, root, free: [root] };
      const turn = ways.filter((t) => enters(t, w, h)).sort((a, b) => score(root, a) - score(root, b))[0];
      if (!turn) return null;
      sheets.push(sheet);
      best = { sheet, block: root, turn };
    }
    place(best.sheet, best.block, item, best.turn, manner.cut);
  }
  return planOf(
    p,
    sheets.map((s) => ({ bin: s.bin, root: frozen(s.root) })),
  );
}

const frozen = (b: Grown): Block =>
  b.cut === null
    ? { ...leaf(b.x, b.y, b.w, b.h), item: b.item, turned: b.turned }
    : {
        ...leaf(b.x, b.y, b.w, b.h),
        cut: { kind: b.cut.kind, low: frozen(b.cut.low), high: frozen(b.cut.high) },
      };

export const planOf = (p: SheetProblem, loads: readonly SheetLoad[]): SheetPlan => ({
  loads,
  weight: loads.reduce((sum, l) => sum + pick(p.bins, l.bin).weight, 0),
  rest: largestRest(loads),
});

/** Smallest owned sheet that takes the piece, else the preferred bought one, else the cheapest that does. */
function opened(p: SheetProblem, ways: readonly Turn[], free: readonly number[], prefer: number): number {
  const able = p.bins
    .map((_, b) => b)
    .filter((b) => at(free, b) > 0 && ways.some((t) => enters(t, pick(p.bins, b).w, pick(p.bins, b).h)));
  const area = (b: number) => pick(p.bins, b).w * pick(p.bins, b).h;
  const owned = able.filter((b) => pick(p.bins, b).weight === 0).sort((a, b) => area(a) - area(b) || a - b);
  if (owned[0] !== undefined) return owned[0];
  if (able.includes(prefer)) return prefer;
  return able.sort((a, b) => pick(p.bins, a).weight - pick(p.bins, b).weight || a - b)[0] ?? -1;
}
