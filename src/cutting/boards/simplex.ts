import { at, pick } from '../at.ts';
import type { Budget } from '../budget.ts';

/** A column of the covering program: which rows it touches, by how much, and what it costs. */
export interface Column {
  readonly rows: readonly number[];
  readonly values: readonly number[];
  readonly cost: number;
}

interface Solved {
  readonly objective: number;
  /** Price of each row, never negative. */
  readonly duals: readonly number[];
  /** Columns in use: index (as given to `add`) and amount. */
  readonly used: readonly { readonly column: number; readonly amount: number }[];
  /** What is left uncovered at the price `missing`. */
  readonly uncovered: number;
}

export interface Covering {
  add(column: Column): number;
  /** Solves over the columns given so far: to optimality, or as far as the budget goes. */
  solve(budget: Budget): Solved;
}

const EPS = 1e-9;
const MOST_PIVOTS = 20_000;
/** Entries of the inverse that are changed in the time of one node of a search. */
const ENTRIES = 600;
/** Pricing a column takes the time of so many entries. */
const COLUMN = 10;

/**
 * min c x subject to A x >= b, x >= 0 by the revised simplex method with a dense inverse of the basis;
 * columns may be added between two solutions. Rows with b < 0 (limits, written as -x >= -n) start with
 * their surplus, the others with an artificial column of cost `missing`.
 */
export function covering(b: readonly number[], missing: number): Covering {
  const m = b.length;
  const columns: Column[] = [];
  // Basis entries: >= 0 a column; -1 - r the artificial of row r; -1 - m - r the surplus of row r.
  const basis = b.map((v, r) => (v < 0 ? -1 - m - r : -1 - r));
  const inverse = b.map((v, r) => {
    const row = new Float64Array(m);
    row[r] = v < 0 ? -1 : 1;
    return row;
  });
  const x = Float64Array.from(b, Math.abs);
  /** Work not charged yet, in nodes. */
  let owed = 0;

  const costOf = (e: number): number => (e >= 0 ? pick(columns, e).cost : e >= -m ? missing : 0);
  const dualsNow = (): Float64Array => {
    const y = new Float64Array(m);
    basis.forEach((e, k) => {
      const c = costOf(e);
      if (c === 0) return;
      const row = pick(inverse, k);
      for (let r = 0; r < m; r++) y[r] = at(y, r) + c * at(row, r);
    });
    return y;
  };
  const reduced = (col: Column, y: Float64Array): number =>
    col.rows.reduce((sum, r, k) => sum - at(y, r) * at(col.values, k), col.cost);

  /** Most negative reduced cost among surplus and columns; null at the optimum. */
  const entering = (y: Float64Array, first: boolean): number | null => {
    let best: number | null = null;
    let least = -EPS;
    const offer = (e: number, d: number) => {
      if (d < least && !(first && best !== null)) {
        least = d;
        best = e;
      }
    };
    for (let r = 0; r < m; r++) offer(-1 - m - r, at(y, r));
    columns.forEach((col, j) => {
      offer(j, reduced(col, y));
    });
    return best;
  };
  const direction = (e: number): Float64Array => {
    const d = new Float64Array(m);
    const rows = e >= 0 ? pick(columns, e).rows : [-1 - m - e];
    const values = e >= 0 ? pick(columns, e).values : [-1];
    for (let k = 0; k < m; k++) {
      const row = pick(inverse, k);
      let sum = 0;
      for (let t = 0; t < rows.length; t++) sum += at(row, at(rows, t)) * at(values, t);
      d[k] = sum;
    }
    return d;
  };
  const pivot = (e: number, d: Float64Array, leave: number): void => {
    const step = at(x, leave) / at(d, leave);
    const lead = pick(inverse, leave);
    const by = 1 / at(d, leave);
    for (let r = 0; r < m; r++) lead[r] = at(lead, r) * by;
    for (let k = 0; k < m; k++) {
      if (k === leave) continue;
      const f = at(d, k);
      if (f === 0) continue;
      x[k] = Math.max(0, at(x, k) - f * step);
      const row = pick(inverse, k);
      for (let r = 0; r < m; r++) row[r] = at(row, r) - f * at(lead, r);
    }
    x[leave] = step;
    basis[leave] = e;
  };
  const leaving = (d: Float64Array): number => {
    let leave = -1;
    for (let k = 0; k < m; k++) {
      if (at(d, k) <= EPS) continue;
      if (leave < 0) {
        leave = k;
        continue;
      }
      const a = at(x, k) / at(d, k);
      const c = at(x, leave) / at(d, leave);
      if (a < c - 1e-12 || (a <= c + 1e-12 && pick(basis, k) < pick(basis, leave))) leave = k;
    }
    return leave;
  };

  return {
    add(column) {
      columns.push(column);
      return columns.length - 1;
    },
    solve(budget) {
      let y = dualsNow();
      for (let pivots = 0; pivots < MOST_PIVOTS; pivots++) {
        // The inverse is gone through for the pivot and for the prices, the columns for the one that enters.
        owed += (2 * m * m + COLUMN * columns.length) / ENTRIES;
        for (; owed >= 1; owed--) budget.spend();
        if (budget.done()) break;
        // After many pivots the first candidate is taken instead of the best: that cannot circle for long.
        const e = entering(y, pivots > MOST_PIVOTS / 2);
        if (e === null) break;
        const d = direction(e);
        const leave = leaving(d);
        if (leave < 0) break;
        pivot(e, d, leave);
        y = dualsNow();
      }
      const used = basis.flatMap((e, k) =>
        e >= 0 && at(x, k) > EPS ? [{ column: e, amount: at(x, k) }] : [],
      );
      const uncovered = basis.reduce((sum, e, k) => (e < 0 && e >= -m ? sum + at(x, k) : sum), 0);
      const objective = basis.reduce((sum, e, k) => sum + costOf(e) * at(x, k), 0);
      return {
        objective,
        duals: Array.from(y, (v) => Math.max(0, v)),
        used: used.sort((p, q) => p.column - q.column),
        uncovered,
      };
    },
  };
}
