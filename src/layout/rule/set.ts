import type { RuleOf } from '../../design/schema.ts';
import { apart } from '../solve/linear.ts';
import type { RuleKindOf } from './rule.ts';

/** An edge stands a given distance beyond another. */
export const setRule: RuleKindOf<RuleOf<'set'>> = {
  equations: (rule, lines) => [apart(lines.edge(rule.edge), lines.edge(rule.from), rule.distance)],
  result: (rule, lines) => apart(lines.edge(rule.edge), lines.edge(rule.from)),
  tie: ({ edge }, part, side) => (edge.of === part && edge.side === side ? 'from' : null),
};
