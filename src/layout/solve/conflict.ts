import type { Rule } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';
import type { Linear } from './linear.ts';
import { Rows } from './rows.ts';

/** A rule with its equations. */
export interface Stated {
  readonly rule: Rule;
  readonly equations: readonly Linear[];
  /** The gap or length that comes out. */
  readonly result: Linear | null;
}

/** A rule that cannot hold, and the smallest set of earlier rules that it fights. */
export interface Rejected {
  readonly rule: Rule;
  readonly fights: readonly Rule[];
}

export interface Verdict {
  readonly accepted: readonly Stated[];
  readonly rejected: readonly Rejected[];
}

/** Adds equations; the tags of the first contradiction, or null. Equation `i` of the rule has the tag `tag + i`. */
function addAll(rows: Rows, { equations }: Stated, tag = -1): readonly number[] | null {
  for (const [i, equation] of equations.entries()) {
    const added = rows.add(equation, tag < 0 ? -1 : tag + i);
    if (added.found === 'contradicts') return added.tags;
  }
  return null;
}

function rowsOf(structure: readonly Linear[], rules: readonly Stated[]): Rows {
  const rows = new Rows();
  for (const equation of structure) rows.add(equation);
  for (const stated of rules) addAll(rows, stated);
  return rows;
}

/** Rows that can name the rules behind a contradiction. */
class Ledger {
  readonly accepted: Stated[] = [];
  private owners: Stated[] = [];
  private rows = new Rows(true);

  constructor(private readonly structure: readonly Linear[]) {
    for (const equation of structure) this.rows.add(equation);
  }

  /** Null when it holds with all before it; else those that it contradicts, in their order. */
  take(stated: Stated): Stated[] | null {
    const tags = this.add(stated);
    if (tags === null) {
      this.accepted.push(stated);
      return null;
    }
    const suspects = new Set(tags.flatMap((tag) => pick(this.owners, tag)));
    suspects.delete(stated);
    // Some of its equations may have gone in before the contradiction showed.
    if (stated.equations.length > 1) this.rebuild();
    return this.accepted.filter((one) => suspects.has(one));
  }

  private add(stated: Stated): readonly number[] | null {
    const tag = this.owners.length;
    for (let i = 0; i < stated.equations.length; i++) this.owners.push(stated);
    return addAll(this.rows, stated, tag);
  }

  private rebuild(): void {
    this.rows = new Rows(true);
    this.owners = [];
    for (const equation of this.structure) this.rows.add(equation);
    for (const stated of this.accepted) this.add(stated);
  }
}

/**
 * Takes the rules in the design's order; one that contradicts those before it is left out, so of two that
 * fight the later one yields.
 */
export function judge(structure: readonly Linear[], rules: readonly Stated[]): Verdict {
  const ledger = new Ledger(structure);
  const rejected: Rejected[] = [];
  for (const stated of rules) {
    const suspects = ledger.take(stated);
    if (suspects === null) continue;
    rejected.push({ rule: stated.rule, fights: smallest(structure, suspects, stated).map((s) => s.rule) });
  }
  return { accepted: ledger.accepted, rejected };
}

/**
 * Of the rules whose equations make up a contradiction the smallest set that still does. Accepted equations
 * are independent, so one equation contradicts them in one way only and needs every one of those: between
 * rules of one equation nothing is left to find out, however long the chain. A rule of several may do with
 * fewer others, by equations that were not needed. Deletion filter, latest first.
 */
function smallest(
  structure: readonly Linear[],
  suspects: readonly Stated[],
  against: Stated,
): readonly Stated[] {
  if ([against, ...suspects].every((one) => one.equations.length === 1)) return suspects;
  let left = suspects;
  for (const suspect of [...suspects].reverse()) {
    const without = left.filter((s) => s !== suspect);
    if (addAll(rowsOf(structure, without), against) !== null) left = without;
  }
  return left;
}
