import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick, under } from '../../list/at.ts';
import { addUp } from '../../list/totals.ts';
import type { Linear } from './linear.ts';

/** A coefficient smaller than this, where the equation's largest is 1, has canceled out. */
const CANCELED = 1e-9;

interface Row {
  readonly pivot: number;
  /** pivot = sum of these plus the constant. */
  terms: ReadonlyMap<number, number>;
  constant: number;
  /** How often each equation it was made from is in it, when that is kept. */
  shares: ReadonlyMap<number, number> | null;
}

export type Added =
  | { readonly found: 'new' }
  /** Already follows from what is there. */
  | { readonly found: 'implied' }
  /** Cannot hold together with the equations of these tags; without any one of them it could. */
  | { readonly found: 'contradicts'; readonly tags: readonly number[] };

/** What an elimination did with a constant; `used`: rows and the weights they came in with, in turn. */
export type Step =
  /** The next expression became a row. */
  | {
      readonly does: 'solved';
      readonly used: readonly number[];
      readonly row: number;
      readonly divisor: number;
    }
  /** The next expression was decided already. */
  | {
      readonly does: 'spent';
      readonly used: readonly number[];
      readonly scale: number;
      readonly implied: boolean;
    }
  /** A row was put in terms of free variables. */
  | { readonly does: 'resolved'; readonly used: readonly number[]; readonly row: number };

/** A finished row without its constant: `terms` are variables and their coefficients in turn. */
export interface Shape {
  readonly pivot: number;
  readonly terms: readonly number[];
}

/**
 * Linear equations solved for one variable each, by exact elimination.
 *
 * Every rule of a layout is an equation, none an inequality, so elimination alone decides whether rules
 * can hold together, and an equation that cannot names its opponents: the rows it was reduced by. Wishes
 * (stay where you were) are added after the rules in order of their importance; one that is already
 * decided has no effect. The answer is therefore always unique, which weighted sums of deviations are
 * not, and what may stay stays exactly.
 */
export class Rows {
  private readonly rows: Row[] = [];
  private readonly rowOf = new Map<number, number>();
  /** What was done with the constants, in order, so that it can be done again with others. */
  readonly steps: Step[] = [];

  constructor(private readonly keepShares = false) {}

  /** Adds `expression = 0`. `tag` names the equation in contradictions; each has its own, or none. */
  add(expression: Linear, tag = -1): Added {
    const shares = this.keepShares ? new Map<number, number>() : null;
    const work = new Map<number, number>();
    const used: number[] = [];
    let sum = expression.constant;
    let largest = 0;
    for (const [index, coefficient] of expression.terms) {
      largest = Math.max(largest, Math.abs(coefficient));
      const row = this.rowOf.get(index);
      if (row === undefined) accumulate(work, index, coefficient);
      else {
        sum += this.substitute(work, row, coefficient, shares);
        used.push(row, coefficient);
      }
    }
    const scale = largest || 1;
    let pivot = -1;
    let best = 0;
    for (const [index, coefficient] of work) {
      const weight = Math.abs(coefficient) / scale;
      if (weight < CANCELED) continue;
      // Of equals the highest variable: those follow the lower ones, so chains stay short.
      if (weight > best * (1 + CANCELED) || (weight > best * (1 - CANCELED) && index > pivot)) {
        best = Math.max(best, weight);
        pivot = index;
      }
    }
    if (pivot < 0) {
      const implied = Math.abs(sum) <= SAME_LENGTH * scale;
      this.steps.push({ does: 'spent', used, scale, implied });
      return implied ? { found: 'implied' } : { found: 'contradicts', tags: tagsIn(shares) };
    }
    const divisor = -under(work, pivot);
    const terms = new Map<number, number>();
    for (const [index, coefficient] of work) {
      if (index !== pivot && Math.abs(coefficient) / scale >= CANCELED)
        terms.set(index, coefficient / divisor);
    }
    if (shares) {
      if (tag >= 0) shares.set(tag, 1);
      for (const [one, share] of shares) shares.set(one, -share / divisor);
    }
    this.steps.push({ does: 'solved', used, row: this.rows.length, divisor });
    this.rowOf.set(pivot, this.rows.length);
    this.rows.push({ pivot, terms, constant: sum / divisor, shares });
    return { found: 'new' };
  }

  /** Value of every variable; those that no equation decides are zero. */
  values(count: number): number[] {
    const values = new Array<number>(count).fill(0);
    // A row only names variables that were free when it was made, so later rows are known first.
    for (let i = this.rows.length - 1; i >= 0; i--) {
      const row = pick(this.rows, i);
      let sum = row.constant;
      for (const [index, coefficient] of row.terms) sum += coefficient * at(values, index);
      values[row.pivot] = sum;
    }
    return values;
  }

  copy(): Rows {
    const twin = new Rows(this.keepShares);
    for (const row of this.rows) twin.rows.push({ ...row });
    for (const [pivot, index] of this.rowOf) twin.rowOf.set(pivot, index);
    for (const step of this.steps) twin.steps.push(step);
    return twin;
  }

  /** The rows as they stand, without their constants, in the order in which they were made. */
  shape(): Shape[] {
    return this.rows.map(({ pivot, terms }) => ({ pivot, terms: [...terms].flat() }));
  }

  /** Adds `weight` times a row to `work`; returns what it adds to the constant. */
  private substitute(
    work: Map<number, number>,
    index: number,
    weight: number,
    shares: Map<number, number> | null,
  ): number {
    const row = this.resolved(index);
    for (const [other, coefficient] of row.terms) accumulate(work, other, weight * coefficient);
    if (shares && row.shares) for (const [tag, share] of row.shares) accumulate(shares, tag, -weight * share);
    return weight * row.constant;
  }

  /** The row in terms of free variables only; kept, so that long chains are walked once. */
  private resolved(index: number): Row {
    const row = pick(this.rows, index);
    let settled = true;
    for (const other of row.terms.keys()) if (this.rowOf.has(other)) settled = false;
    if (settled) return row;
    const work = new Map<number, number>();
    const shares = row.shares ? new Map<number, number>() : null;
    const used: number[] = [];
    let sum = row.constant;
    for (const [other, coefficient] of row.terms) {
      const next = this.rowOf.get(other);
      if (next === undefined) accumulate(work, other, coefficient);
      else {
        sum += this.substitute(work, next, coefficient, shares);
        used.push(next, coefficient);
      }
    }
    this.steps.push({ does: 'resolved', used, row: index });
    for (const [other, coefficient] of work) if (Math.abs(coefficient) < CANCELED) work.delete(other);
    row.terms = work;
    row.constant = sum;
    if (shares && row.shares) {
      // What was substituted came in on the other side.
      for (const [tag, share] of shares) shares.set(tag, -share);
      for (const [tag, share] of row.shares) accumulate(shares, tag, share);
      row.shares = shares;
    }
    return row;
  }
}

function accumulate(work: Map<number, number>, index: number, coefficient: number): void {
  addUp(work, index, coefficient);
}

/** The equations that did not cancel out. */
function tagsIn(shares: ReadonlyMap<number, number> | null): number[] {
  const found: number[] = [];
  for (const [tag, share] of shares ?? []) if (Math.abs(share) > CANCELED) found.push(tag);
  return found.sort((a, b) => a - b);
}
