import { DUST, SAME_LENGTH } from '../../geometry/tolerance.ts';
import { stair } from '../boards/bound.ts';
import { leastCover } from '../cover.ts';
import type { SheetProblem } from './problem.ts';

/**
 * Lower bounds on the weight of any plan, guillotine or not. Area: every sheet gives its area at its
 * price. Bent sides: dual feasible functions (Fekete and Schepers) bend the sides of pieces against the
 * largest sheet, so that pieces over half a side count as a whole side; a piece that may turn counts by
 * its smaller bent area.
 */

/** Sides just over half a sheet count as a whole, those under `edge` as nothing; between, as they are. */
function threshold(x: number, edge: number): number {
  if (x > 1 - edge + DUST) return 1;
  return x < edge - DUST ? 0 : x;
}

type Bend = (x: number) => number;

const STAIRS = [1, 2, 3, 4, 5];

function bends(sides: readonly number[]): Bend[] {
  const edges = [...new Set(sides.filter((s) => s <= 0.5).concat(0.5))].sort((a, b) => a - b).slice(-12);
  return [
    (x) => x,
    ...STAIRS.map(
      (k): Bend =>
        (x) =>
          stair(x, k),
    ),
    ...edges.map(
      (e): Bend =>
        (x) =>
          threshold(x, e),
    ),
  ];
}

/** Fewest sheets of w by h. */
export function sheetCountBound(p: SheetProblem, w: number, h: number): number {
  const sides = p.items.flatMap((i) => i.ways.flatMap((t) => [t.w / w, t.h / h]));
  const all = bends(sides);
  let best = 0;
  for (const f of all) {
    for (const g of all) {
      const sum = p.items.reduce((total, item) => {
        const fitting = item.ways.filter((t) => t.w <= w + SAME_LENGTH && t.h <= h + SAME_LENGTH);
        const least = Math.min(...fitting.map((t) => f(Math.min(1, t.w / w)) * g(Math.min(1, t.h / h))));
        return total + (Number.isFinite(least) ? least * item.count : 0);
      }, 0);
      best = Math.max(best, sum);
    }
  }
  return Math.ceil(best - 1e-6);
}

/** What has to be bought at least, and what of: the area that owned sheets do not give, and the largest sides. */
function toBuy(p: SheetProblem) {
  const bought = p.bins.filter((b) => b.weight > 0);
  const owned = p.bins.filter((b) => b.weight === 0);
  const area = p.items.reduce((sum, i) => sum + i.area * i.count, 0);
  return {
    bought,
    hasOwned: owned.length > 0,
    area: area - owned.reduce((sum, b) => sum + b.w * b.h * b.limit, 0),
    w: Math.max(...bought.map((b) => b.w)),
    h: Math.max(...bought.map((b) => b.h)),
  };
}

export function sheetBound(p: SheetProblem): number {
  const { bought, hasOwned, area, w, h } = toBuy(p);
  if (bought.length === 0) return 0;
  const byArea = leastCover(
    bought.map((b) => ({ amount: b.w * b.h, weight: b.weight })),
    area,
  );
  if (hasOwned) return p.roundUp(byArea);
  const cheapest = Math.min(...bought.map((b) => b.weight));
  return p.roundUp(Math.max(byArea, sheetCountBound(p, w, h) * cheapest));
}

/** Fewest bought sheets by the largest sides that can be bought. */
export function fewestSheets(p: SheetProblem): number {
  const { bought, hasOwned, area, w, h } = toBuy(p);
  if (bought.length === 0) return 0;
  if (!hasOwned) return sheetCountBound(p, w, h);
  const largest = Math.max(...bought.map((b) => b.w * b.h));
  return Math.max(0, Math.ceil(area / largest - 1e-6));
}
