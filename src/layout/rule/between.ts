import type { RuleOf } from '../../design/schema.ts';
import { apart } from '../solve/linear.ts';
import type { RuleKindOf } from './rule.ts';

/** The part runs from one edge to another, held back by an inset at each end. Result: its length. */
export const betweenRule: RuleKindOf<RuleOf<'between'>> = {
  equations: (rule, lines) => [
    apart(lines.low(rule.part), lines.edge(rule.low), rule.insetLow),
    apart(lines.edge(rule.high), lines.high(rule.part), rule.insetHigh),
  ],
  result: (rule, lines) => apart(lines.high(rule.part), lines.low(rule.part)),
  tie: (rule, part, side) => (rule.part === part ? side : null),
};
