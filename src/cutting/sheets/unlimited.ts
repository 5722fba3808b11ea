import { DUST } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Made } from './made.ts';
import { pointUnder, sumsUpTo } from './points.ts';
import { madeOf, placementsOf, type ValuedLayout, type ValuedType, type Way } from './valued.ts';

/** Best values of all blocks whose sides are discretization points. */
export interface ValueTable {
  readonly xs: readonly Mm[];
  readonly ys: readonly Mm[];
  /** Row by row: index `i * ys.length + j` for the block xs[i] by ys[j]. */
  readonly value: Float64Array;
  /** What gives the value: 0 nothing, k > 0 way k - 1. */
  readonly way: Int32Array;
  /** Else a cut: k > 0 across x at xs[k], k < 0 along x at ys[-k]. */
  readonly cut: Int32Array;
}

/**
 * P. C. Gilmore and R. E. Gomory's recursion (Operations Research 14, 1966) over discretization points: a
 * block is worth its best single piece, or the best two blocks that an edge-to-edge cut makes of it. By
 * symmetry cuts beyond the middle need not be tried. Null when there are more than `cells` blocks to value.
 */
export function valueTable(
  sheet: { readonly w: Mm; readonly h: Mm },
  types: readonly ValuedType[],
  ways: readonly Way[],
  cells: number,
): ValueTable | null {
  const most = (size: Mm, limit: Mm) => Math.floor(limit / size + DUST);
  const xs = sumsUpTo(
    ways.map((o) => ({ size: o.w, most: most(o.w, sheet.w) })),
    sheet.w,
    cells,
  );
  if (!xs) return null;
  const ys = sumsUpTo(
    ways.map((o) => ({ size: o.h, most: most(o.h, sheet.h) })),
    sheet.h,
    cells / xs.length,
  );
  if (!ys) return null;
  const rows = ys.length;
  const value = new Float64Array(xs.length * rows);
  const way = new Int32Array(xs.length * rows);
  const cut = new Int32Array(xs.length * rows);
  ways.forEach((o, k) => {
    const worth = pick(types, o.type).value;
    for (let i = pointUnder(xs, o.w); i < xs.length; i++) {
      for (let j = pointUnder(ys, o.h); j < rows; j++) {
        if (worth <= at(value, i * rows + j)) continue;
        value[i * rows + j] = worth;
        way[i * rows + j] = k + 1;
      }
    }
  });
  const rightOf = pairs(xs);
  const above = pairs(ys);
  for (let i = 1; i < xs.length; i++) {
    const right = pick(rightOf, i);
    for (let j = 1; j < rows; j++) {
      const here = i * rows + j;
      let best = at(value, here);
      let how = 0;
      for (let k = 1; k < right.length; k++) {
        const sum = at(value, k * rows + j) + at(value, at(right, k) * rows + j);
        if (sum > best) {
          best = sum;
          how = k;
        }
      }
      const up = pick(above, j);
      for (let k = 1; k < up.length; k++) {
        const sum = at(value, i * rows + k) + at(value, i * rows + at(up, k));
        if (sum > best) {
          best = sum;
          how = -k;
        }
      }
      value[here] = best;
      cut[here] = how;
    }
  }
  return { xs, ys, value, way, cut };
}

/** For each point, the largest point in what a cut at each earlier point up to the middle leaves. */
const pairs = (points: readonly Mm[]): number[][] =>
  points.map((p) => {
    const rest: number[] = [];
    for (let k = 0; k < points.length && at(points, k) <= p / 2 + DUST; k++) {
      rest.push(pointUnder(points, p - at(points, k)));
    }
    return rest;
  });

/** The best pattern that a table of values holds for the whole sheet. */
export function bestUnlimited(t: ValueTable, ways: readonly Way[]): ValuedLayout {
  const rows = t.ys.length;
  const walk = (i: number, j: number): Made | null => {
    const here = i * rows + j;
    const k = at(t.cut, here);
    if (k > 0) {
      return joined('cross', walk(k, j), walk(pointUnder(t.xs, at(t.xs, i) - at(t.xs, k)), j));
    }
    if (k < 0) {
      return joined('rip', walk(i, -k), walk(i, pointUnder(t.ys, at(t.ys, j) - at(t.ys, -k))));
    }
    if (at(t.way, here) === 0) return null;
    const { w, h, type, turned } = pick(ways, at(t.way, here) - 1);
    return { w, h, item: type, turned };
  };
  const made = walk(t.xs.length - 1, rows - 1);
  return { value: at(t.value, t.xs.length * rows - 1), made, layout: placementsOf(made), proved: true };
}

const joined = (kind: 'rip' | 'cross', low: Made | null, high: Made | null): Made | null =>
  low && high ? madeOf(kind, low, high) : (low ?? high);
