import type { Rule } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { equationsOf } from '../rule/table.ts';
import type { Attempt } from './attempt.ts';
import { isBlock, solveArranged } from './blocks.ts';
import { type ComponentInput, groundOf } from './input.ts';
import { evaluate } from './linear.ts';
import { linesOf } from './lines.ts';

/** Rules of a component up to which it is found out whether a fight stands whatever ends the blocks. */
const MOST_RULES = 60;

/** Of each rule that does not hold the others that it fights; none where that is not known. */
export function fightsOf(input: ComponentInput, found: Attempt): Map<Rule, readonly Rule[]> {
  const fights = new Map<Rule, readonly Rule[]>(found.astray.map((rule) => [rule, []]));
  for (const { rule, fights: others } of found.solution.frame.rejected) fights.set(rule, others);
  if (input.component.rules.length > MOST_RULES) return fights;
  for (const [rule, others] of fights) {
    // Said for one choice of what ends the blocks; another may reconcile these and fight others.
    if ([rule, ...others].some(isBlock)) fights.set(rule, whateverEnds(input, found, rule, others));
  }
  return fights;
}

/** The smallest set of earlier rules that the rule fights whatever ends the blocks. */
function whateverEnds(
  input: ComponentInput,
  found: Attempt,
  rule: Rule,
  known: readonly Rule[],
): readonly Rule[] {
  const { rules } = input.component;
  const earlier = rules.slice(0, rules.indexOf(rule)).filter((one) => !found.failing.has(one));
  let suspects = known.filter((one) => earlier.includes(one));
  for (;;) {
    const some = onlyWith(input, [...suspects, rule]);
    const held = solveArranged(some, null, 'any');
    if (held.failing.size > 0) break;
    const broken = earlier.find((one) => !suspects.includes(one) && !holds(input, held, one));
    if (!broken) return known;
    suspects = [...suspects, broken];
  }
  for (const suspect of [...suspects].reverse()) {
    const without = suspects.filter((one) => one !== suspect);
    if (solveArranged(onlyWith(input, [...without, rule]), null, 'any').failing.size > 0) suspects = without;
  }
  return earlier.filter((one) => suspects.includes(one));
}

/** The same parts under some of the rules. */
function onlyWith(input: ComponentInput, some: readonly Rule[]): ComponentInput {
  const rules = input.component.rules.filter((rule) => some.includes(rule));
  const ruleIndex = new Map(rules.map((rule, i) => [rule.id, i]));
  return { ...input, component: { ...input.component, rules, ruleIndex } };
}

function holds(input: ComponentInput, { solution: { found } }: Attempt, rule: Rule): boolean {
  const lines = linesOf(groundOf(input), found);
  const values = found.flatMap((span) => [span.low, span.high]);
  return equationsOf(rule, lines).every((equation) => Math.abs(evaluate(equation, values)) <= SAME_LENGTH);
}
