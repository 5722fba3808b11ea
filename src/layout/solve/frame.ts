import type { Rule } from '../../design/schema.ts';
import type { Structure } from '../structure.ts';
import { judge, type Rejected, type Stated } from './conflict.ts';
import type { ComponentInput } from './input.ts';
import type { Linear } from './linear.ts';
import { sizeIs } from './lines.ts';
import { Rows } from './rows.ts';

/** The required equations of a component, eliminated; they do not depend on where parts are wished to be. */
export interface Frame {
  readonly signature: string;
  /** The equations that hold, in the order in which they are eliminated. */
  readonly equations: readonly Linear[];
  readonly rows: () => Rows;
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
  const canonical = inOwnOrder(stated);
  const equations = [...structure, ...canonical.flatMap((s) => s.equations)];
  const rows = eliminated(equations);
  const rules = new Set(stated.map((s) => s.rule));
  if (rows) return { signature, equations, rows: () => rows, stated: rules, rejected: [] };
  // Only when something fights does the design's order count; the answer is then made of those that hold,
  // again in an order of their own.
  const verdict = judge(structure, order === 'design' ? stated : canonical);
  const holding = new Set(verdict.accepted);
  const rest = [...structure, ...canonical.filter((s) => holding.has(s)).flatMap((s) => s.equations)];
  const forgiven = eliminated(rest, true) ?? new Rows();
  return { signature, equations: rest, rows: () => forgiven, stated: rules, rejected: verdict.rejected };
}

/** Every equation as it is eliminated while all of them hold. */
export const allEquations = (input: ComponentInput, stated: readonly Stated[]): Linear[] => [
  ...structureEquations(input.structures),
  ...inOwnOrder(stated).flatMap((s) => s.equations),
];

/** A frame whose equations are known to hold together; they are eliminated only when that is asked for. */
export function holdingFrame(
  equations: readonly Linear[],
  stated: readonly Stated[],
  signature: string,
): Frame {
  let rows: Rows | null = null;
  return {
    signature,
    equations,
    rows: () => {
      rows ??= eliminated(equations, true) ?? new Rows();
      return rows;
    },
    stated: new Set(stated.map((s) => s.rule)),
    rejected: [],
  };
}

const inOwnOrder = (stated: readonly Stated[]): Stated[] =>
  [...stated].sort((a, b) => (a.rule.id < b.rule.id ? -1 : 1));

function structureEquations(structures: readonly Structure[]): Linear[] {
  return structures.flatMap(({ fixed }, i) => (fixed === null ? [] : [sizeIs(i, fixed)]));
}

/** Null where the equations contradict each other, unless `forgiving`: then by rounding only. */
function eliminated(equations: readonly Linear[], forgiving = false): Rows | null {
  const rows = new Rows();
  for (const equation of equations) {
    if (rows.add(equation).found === 'contradicts' && !forgiving) return null;
  }
  return rows;
}
