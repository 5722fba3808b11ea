import { DUST, SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import { wholeUp } from '../../measure/round.ts';
import { stair } from '../boards/bound.ts';
import { leastCover } from '../cover.ts';
import type { SheetBin, SheetProblem } from './problem.ts';

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

/** Sides of sheets are sums of rounded numbers: they give a hair more. */
const HAIR = 1e-9;

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

/**
 * What pieces ask and what sheets give, both bent by two functions against a sheet of w by h. Such functions are
 * superadditive: pieces side by side come to no more than the sheet that they lie on, whichever size it has (C. Alves,
 * F. Clautiaux, J. Valerio de Carvalho and J. Rietz, Dual-Feasible Functions for Integer Programming, 2016, chapter 2,
 * from memory).
 */
function* bentBy(
  p: SheetProblem,
  w: number,
  h: number,
): Generator<{ readonly need: number; readonly gives: (bin: SheetBin) => number }> {
  const fitting = p.items.map(({ ways, count }) => ({
    count,
    ways: ways
      .filter((t) => t.w <= w + SAME_LENGTH && t.h <= h + SAME_LENGTH)
      .map((t) => ({ w: Math.min(1, t.w / w), h: Math.min(1, t.h / h) })),
  }));
  const all = bends(p.items.flatMap((i) => i.ways.flatMap((t) => [t.w / w, t.h / h])));
  const bentBySide = (side: 'w' | 'h') =>
    all.map((bend) => fitting.map(({ ways }) => ways.map((t) => bend(t[side]))));
  const [wide, high] = [bentBySide('w'), bentBySide('h')];
  for (const [k, f] of all.entries()) {
    for (const [l, g] of all.entries()) {
      const [across, up] = [pick(wide, k), pick(high, l)];
      let need = 0;
      for (let i = 0; i < fitting.length; i++) {
        const [ws, hs] = [pick(across, i), pick(up, i)];
        let least = Infinity;
        for (let t = 0; t < ws.length; t++) least = Math.min(least, at(ws, t) * at(hs, t));
        if (least < Infinity) need += least * pick(fitting, i).count;
      }
      yield { need, gives: (bin) => f(Math.min(1, bin.w / w)) * g(Math.min(1, bin.h / h)) };
    }
  }
}

/** Fewest sheets of w by h. */
export function sheetCountBound(p: SheetProblem, w: number, h: number): number {
  let best = 0;
  for (const { need } of bentBy(p, w, h)) best = Math.max(best, need);
  return wholeUp(best);
}

/** Least weight of sheets, whichever sizes, that give what the pieces ask by any pair of functions. */
function coverBound(p: SheetProblem, bought: readonly SheetBin[], w: number, h: number): number {
  let best = 0;
  for (const { need, gives } of bentBy(p, w, h)) {
    const kinds = bought.map((b) => ({ amount: gives(b) * (1 + HAIR), weight: b.weight }));
    // A size that gives nothing by these functions holds nothing that they count.
    const giving = kinds.filter(({ amount }) => amount > 0);
    // Of one size alone no less is needed: most pairs say no more than those before them.
    if (giving.some((kind) => Math.ceil(need / kind.amount) * kind.weight <= best)) continue;
    best = Math.max(best, leastCover(giving, need));
  }
  return best;
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
  return p.roundUp(Math.max(byArea, coverBound(p, bought, w, h)));
}

/** Fewest bought sheets by the largest sides that can be bought. */
export function fewestSheets(p: SheetProblem): number {
  const { bought, hasOwned, area, w, h } = toBuy(p);
  if (bought.length === 0) return 0;
  if (!hasOwned) return sheetCountBound(p, w, h);
  const largest = Math.max(...bought.map((b) => b.w * b.h));
  return wholeUp(area / largest);
}
