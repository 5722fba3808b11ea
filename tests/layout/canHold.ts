import { Constraint, Expression, Operator, Solver, Strength, Variable } from '@lume/kiwi';
import type { Part, Rule } from '../../src/design/schema.ts';
import { deviations } from './holds.ts';
import { at, plainFace } from './sample.ts';

/** A block with the parts that are taken to end it. */
interface Ended {
  readonly rule: Extract<Rule, { kind: 'center' }>;
  readonly low: string;
  readonly high: string;
}

/** Every way in which the blocks can be ended. */
function endings(rules: readonly Rule[]): Ended[][] {
  let found: Ended[][] = [[]];
  for (const rule of rules) {
    if (rule.kind !== 'center' || rule.parts.length < 2) continue;
    found = found.flatMap((some) =>
      rule.parts.flatMap((low) => rule.parts.map((high) => [...some, { rule, low, high }])),
    );
  }
  return found;
}

/**
 * The rules of one axis given to an independent constraint solver (Cassowary), which only says whether
 * they can hold together. Deviations are linear in the boxes, so their coefficients are read off by
 * moving one edge at a time. Those of blocks are not: every pair of parts that may end each block is gone
 * through, with the others of the block held between by inequalities.
 */
export function canHold(
  parts: readonly Part[],
  rules: readonly Rule[],
  fixed: ReadonlyMap<string, number>,
): boolean {
  return endings(rules).some((ended) => canHoldEnded(parts, rules, fixed, ended));
}

function canHoldEnded(
  parts: readonly Part[],
  rules: readonly Rule[],
  fixed: ReadonlyMap<string, number>,
  ended: readonly Ended[],
): boolean {
  const face = plainFace();
  const solver = new Solver();
  const ids = parts.map((part) => part.id);
  const variables = ids.flatMap((id) => [new Variable(`${id}.x`), new Variable(`${id}.w`)]);
  const boxes = (values: readonly number[]) =>
    new Map(ids.map((id, i) => [id, at(values[2 * i] ?? 0, 0, values[2 * i + 1] ?? 0, 1)]));
  const zero = variables.map(() => 0);
  const require = (terms: readonly [number, Variable][], rest: number, operator = Operator.Eq): boolean => {
    const some = terms.filter(([c]) => Math.abs(c) > 1e-12);
    if (some.length === 0) return operator === Operator.Eq ? Math.abs(rest) < 1e-6 : rest > -1e-6;
    try {
      solver.addConstraint(
        new Constraint(new Expression(...some, rest), operator, undefined, Strength.required),
      );
      return true;
    } catch {
      return false;
    }
  };
  for (const [id, w] of fixed) {
    const size = variables[2 * ids.indexOf(id) + 1];
    if (size && !require([[1, size]], -w)) return false;
  }
  /** What the boxes come to where that is linear in them. */
  const requireAll = (
    values: (at: ReturnType<typeof boxes>) => number[],
    operator = Operator.Eq,
  ): boolean => {
    const base = values(boxes(zero));
    const columns = variables.map((_, i) => values(boxes(zero.map((v, j) => (i === j ? 1 : v)))));
    return base.every((rest, k) =>
      require(variables.map((v, i): [number, Variable] => [
        (columns[i]?.[k] ?? 0) - rest,
        v,
      ]), rest, operator),
    );
  };
  for (const rule of rules) {
    const block = ended.find((one) => one.rule === rule);
    if (!block) {
      if (!requireAll((all) => deviations(rule, face, all))) return false;
      continue;
    }
    const { low, high } = block;
    const lowAt = (all: ReturnType<typeof boxes>, id: string) => all.get(id)?.x ?? 0;
    const highAt = (all: ReturnType<typeof boxes>, id: string) => lowAt(all, id) + (all.get(id)?.w ?? 0);
    // One part alone deviates by low + high - span: swap in the high edge of the other.
    const centered = requireAll((all) => [
      (deviations({ ...block.rule, parts: [low] }, face, all)[0] ?? 0) - highAt(all, low) + highAt(all, high),
    ]);
    const within = requireAll(
      (all) =>
        block.rule.parts.flatMap((id) => [
          lowAt(all, id) - lowAt(all, low),
          highAt(all, high) - highAt(all, id),
        ]),
      Operator.Ge,
    );
    if (!centered || !within) return false;
  }
  return true;
}
