import type { Mm } from '../../measure/units.ts';
import { at, pick } from '../at.ts';
import { pointUnder, sumsUpTo } from './points.ts';
import type { ValuedLayout, ValuedPlacement, ValuedType, Way } from './valued.ts';

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
 * symmetry cuts beyond the middle need not be tried.
 */
export function valueTable(
  sheet: { readonly w: Mm; readonly h: Mm },
  types: readonly ValuedType[],
  ways: readonly Way[],
): ValueTable {
  const most = (size: Mm, limit: Mm) => Math.floor(limit / size + 1e-9);
  const xs = sumsUpTo(
    ways.map((o) => ({ size: o.w, most: most(o.w, sheet.w) })),
    sheet.w,
  );
  const ys = sumsUpTo(
    ways.map((o) => ({ size: o.h, most: most(o.h, sheet.h) })),
    sheet.h,
  );
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
    for (let k = 0; k < points.length && at(points, k) <= p / 2 + 1e-9; k++) {
      rest.push(pointUnder(points, p - at(points, k)));
    }
    return rest;
  });

export function bestUnlimited(
  sheet: { readonly w: Mm; readonly h: Mm },
  types: readonly ValuedType[],
  ways: readonly Way[],
): ValuedLayout {
  const t = valueTable(sheet, types, ways);
  const rows = t.ys.length;
  const layout: ValuedPlacement[] = [];
  const walk = (i: number, j: number, x: Mm, y: Mm): void => {
    const here = i * rows + j;
    const k = at(t.cut, here);
    if (k > 0) {
      walk(k, j, x, y);
      walk(pointUnder(t.xs, at(t.xs, i) - at(t.xs, k)), j, x + at(t.xs, k), y);
    } else if (k < 0) {
      walk(i, -k, x, y);
      walk(i, pointUnder(t.ys, at(t.ys, j) - at(t.ys, -k)), x, y + at(t.ys, -k));
    } else if (at(t.way, here) > 0) {
      const o = pick(ways, at(t.way, here) - 1);
      layout.push({ type: o.type, x, y, w: o.w, h: o.h, turned: o.turned });
    }
  };
  const last = [t.xs.length - 1, rows - 1] as const;
  walk(last[0], last[1], 0, 0);
  return { value: at(t.value, last[0] * rows + last[1]), layout, proved: true };
}
