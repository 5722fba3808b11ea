import { at, pick, real } from '../../list/at.ts';
import type { Budget } from '../budget.ts';

/** A column of the covering program: which rows it touches, by how much, and what it costs. */
export interface Column {
  readonly rows: readonly number[];
  readonly values: readonly number[];
  readonly cost: number;
}

interface Solved {
  /** Price of each row, never negative. */
  readonly duals: readonly number[];
  /** Columns in use: index (as given to `add`) and amount. */
  readonly used: readonly { readonly column: number; readonly amount: number }[];
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
 * The columns that are in use, with the dense inverse of the matrix that they make and how much there is of each.
 * An entry is a column where it is >= 0, -1 - r the artificial of row r, -1 - m - r the surplus of row r.
 */
class Basis {
  readonly entries: number[];
  readonly amounts: Float64Array;
  readonly #inverse: readonly Float64Array[];

  /** Rows with b < 0 (limits, written as -x >= -n) start with their surplus, the others with an artificial. */
  constructor(b: readonly number[]) {
    const m = b.length;
    this.entries = b.map((v, r) => (v < 0 ? -1 - m - r : -1 - r));
    this.amounts = Float64Array.from(b, Math.abs);
    this.#inverse = b.map((v, r) => {
      const row = new Float64Array(m);
      row[r] = v < 0 ? -1 : 1;
      return row;
    });
  }

  get size(): number {
    return this.entries.length;
  }

  /** Prices of the rows, by the costs of what is in use. */
  duals(costOf: (entry: number) => number): Float64Array {
    const m = this.size;
    const y = new Float64Array(m);
    this.entries.forEach((e, k) => {
      const c = costOf(e);
      if (c === 0) return;
      const row = pick(this.#inverse, k);
      for (let r = 0; r < m; r++) y[r] = real(y, r) + c * real(row, r);
    });
    return y;
  }

  /** How fast each amount falls as that of a column with these values in these rows grows. */
  direction({ rows, values }: Pick<Column, 'rows' | 'values'>): Float64Array {
    return Float64Array.from(this.#inverse, (row) => {
      let sum = 0;
      for (let t = 0; t < rows.length; t++) sum += real(row, at(rows, t)) * at(values, t);
      return sum;
    });
  }

  /** The place that is used up first along a direction, the lowest entry of several; -1 where there is none. */
  leaving(d: Float64Array): number {
    const { size: m, amounts: x, entries } = this;
    let leave = -1;
    for (let k = 0; k < m; k++) {
      if (real(d, k) <= EPS) continue;
      if (leave < 0) {
        leave = k;
        continue;
      }
      const a = real(x, k) / real(d, k);
      const c = real(x, leave) / real(d, leave);
      if (a < c - 1e-12 || (a <= c + 1e-12 && pick(entries, k) < pick(entries, leave))) leave = k;
    }
    return leave;
  }

  /** Takes an entry in the place of the one that leaves. */
  pivot(entry: number, d: Float64Array, leave: number): void {
    const { size: m, amounts: x } = this;
    const step = real(x, leave) / real(d, leave);
    const lead = pick(this.#inverse, leave);
    const by = 1 / real(d, leave);
    for (let r = 0; r < m; r++) lead[r] = real(lead, r) * by;
    for (let k = 0; k < m; k++) {
      if (k === leave) continue;
      const f = real(d, k);
      if (f === 0) continue;
      x[k] = Math.max(0, real(x, k) - f * step);
      const row = pick(this.#inverse, k);
      for (let r = 0; r < m; r++) row[r] = real(row, r) - f * real(lead, r);
    }
    x[leave] = step;
    this.entries[leave] = entry;
  }
}

/**
 * min c x subject to A x >= b, x >= 0 by the revised simplex method with a dense inverse of the basis;
 * columns may be added between two solutions. An artificial column costs `missing`.
 */
export function covering(b: readonly number[], missing: number): Covering {
  const m = b.length;
  const columns: Column[] = [];
  const basis = new Basis(b);
  /** Work not charged yet, in nodes. */
  let owed = 0;
  const costOf = (e: number): number => (e >= 0 ? pick(columns, e).cost : e >= -m ? missing : 0);
  const valuesOf = (e: number) => (e >= 0 ? pick(columns, e) : { rows: [-1 - m - e], values: [-1] });

  return {
    add(column) {
      columns.push(column);
      return columns.length - 1;
    },
    solve(budget) {
      let y = basis.duals(costOf);
      for (let pivots = 0; pivots < MOST_PIVOTS; pivots++) {
        // The inverse is gone through for the pivot and for the prices, the columns for the one that enters.
        owed += (2 * m * m + COLUMN * columns.length) / ENTRIES;
        for (; owed >= 1; owed--) budget.spend();
        if (budget.done()) break;
        // After many pivots the first candidate is taken instead of the best: that cannot circle for long.
        const e = entering(columns, y, pivots > MOST_PIVOTS / 2);
        if (e === null) break;
        const d = basis.direction(valuesOf(e));
        const leave = basis.leaving(d);
        if (leave < 0) break;
        basis.pivot(e, d, leave);
        y = basis.duals(costOf);
      }
      return solved(basis, y);
    },
  };
}

const reduced = (col: Column, y: Float64Array): number =>
  col.rows.reduce((sum, r, k) => sum - real(y, r) * at(col.values, k), col.cost);

/** Most negative reduced cost among surplus and columns, or the first below zero; null at the optimum. */
function entering(columns: readonly Column[], y: Float64Array, first: boolean): number | null {
  const m = y.length;
  let best: number | null = null;
  let least = -EPS;
  const offer = (e: number, d: number) => {
    if (d < least && !(first && best !== null)) {
      least = d;
      best = e;
    }
  };
  for (let r = 0; r < m; r++) offer(-1 - m - r, real(y, r));
  columns.forEach((col, j) => {
    offer(j, reduced(col, y));
  });
  return best;
}

function solved({ entries, amounts: x }: Basis, y: Float64Array): Solved {
  const used = entries.flatMap((e, k) =>
    e >= 0 && real(x, k) > EPS ? [{ column: e, amount: real(x, k) }] : [],
  );
  return {
    duals: Array.from(y, (v) => Math.max(0, v)),
    used: used.sort((p, q) => p.column - q.column),
  };
}
