import type { Rule } from '../../design/schema.ts';
import type { Linear } from './linear.ts';
import { Rows } from './rows.ts';

/** A rule with its equations. */
export interface Stated {
  readonly rule: Rule;
  readonly equations: readonly Linear[];
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

/** Adds every equation; the tags of the first contradiction, or null. */
function addAll(rows: Rows, stated: Stated, tag: number): readonly number[] | null {
  for (const equation of stated.equations) {
    const added = rows.add(equation, tag);
    if (added.found === 'contradicts') return added.tags;
  }
  return null;
}

function rowsOf(structure: readonly Linear[], rules: readonly Stated[]): Rows {
  const rows = new Rows(true);
  for (const equation of structure) rows.add(equation, -1);
  rules.forEach((stated, i) => {
    addAll(rows, stated, i);
  });
  return rows;
}

/**
 * Takes the rules in the design's order; one that contradicts those before it is left out, so of two that
 * fight the later one yields.
 */
export function judge(structure: readonly Linear[], rules: readonly Stated[]): Verdict {
  const accepted: Stated[] = [];
  const rejected: Rejected[] = [];
  let rows = rowsOf(structure, accepted);
  for (const stated of rules) {
    const tags = addAll(rows, stated, accepted.length);
    if (tags === null) {
      accepted.push(stated);
      continue;
    }
    const suspects = tags.flatMap((tag) => accepted[tag] ?? []);
    rejected.push({ rule: stated.rule, fights: smallest(structure, suspects, stated).map((s) => s.rule) });
    // Some of its equations may have gone in before the contradiction showed.
    rows = rowsOf(structure, accepted);
  }
  return { accepted, rejected };
}

/** Deletion filter, latest first: what remains contradicts the rule, and no part of it does. */
function smallest(structure: readonly Linear[], suspects: readonly Stated[], against: Stated): Stated[] {
  let left = [...suspects];
  for (const suspect of [...suspects].reverse()) {
    const without = left.filter((s) => s !== suspect);
    if (addAll(rowsOf(structure, without), against, without.length) !== null) left = without;
  }
  return left;
}
