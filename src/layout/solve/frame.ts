import type { Rule } from '../../design/schema.ts';
import type { Structure } from '../structure.ts';
import { judge, type Rejected, type Stated } from './conflict.ts';
import type { ComponentInput } from './input.ts';
import { apart, type Linear, variable } from './linear.ts';
import { highOf, lowOf } from './lines.ts';
import { Rows } from './rows.ts';

/** The required equations of a component, eliminated; they do not depend on where parts are wished to be. */
export interface Frame {
  readonly signature: string;
  readonly rows: Rows;
  /** Rules it was made from, those that could not hold among them. */
  readonly stated: ReadonlySet<Rule>;
  readonly rejected: readonly Rejected[];
}

/**
 * Whose order decides which rule yields. While guesses are still being improved an order of the rules'
 * own, so that where they lead does not depend on the design's order; at the end the design's.
 */
export type Order = 'own' | 'design';

/** Eliminates the equations, leaving out what cannot hold. */
export function frameOf(
  input: ComponentInput,
  stated: readonly Stated[],
  signature: string,
  order: Order,
): Frame {
  const structure = structureEquations(input.structures);
  const canonical = [...stated].sort((a, b) => (a.rule.id < b.rule.id ? -1 : 1));
  const rows = eliminated(structure, canonical);
  const rules = new Set(stated.map((s) => s.rule));
  if (rows) return { signature, rows, stated: rules, rejected: [] };
  // Only when something fights does the design's order count; the answer is then made of those that hold,
  // again in an order of their own.
  const verdict = judge(structure, order === 'design' ? stated : canonical);
  const holding = new Set(verdict.accepted);
  return {
    signature,
    rows:
      eliminated(
        structure,
        canonical.filter((s) => holding.has(s)),
        true,
      ) ?? new Rows(),
    stated: rules,
    rejected: verdict.rejected,
  };
}

function structureEquations(structures: readonly Structure[]): Linear[] {
  return structures.flatMap(({ fixed }, i) =>
    fixed === null ? [] : [apart(variable(highOf(i)), variable(lowOf(i)), fixed)],
  );
}

/** Null where the equations contradict each other, unless `forgiving`: then by rounding only. */
function eliminated(structure: readonly Linear[], rules: readonly Stated[], forgiving = false): Rows | null {
  const rows = new Rows();
  for (const equation of structure) rows.add(equation);
  for (const { equations } of rules) {
    for (const equation of equations) {
      if (rows.add(equation).found === 'contradicts' && !forgiving) return null;
    }
  }
  return rows;
}
