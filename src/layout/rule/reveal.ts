import { endsOfMargin } from '../../design/rule/reveal.ts';
import type { RuleOf } from '../../design/schema.ts';
import { apart } from '../solve/linear.ts';
import type { RuleKindOf } from './rule.ts';

/** The same margin on all four sides inside something. Result: the margin. */
export const revealRule: RuleKindOf<RuleOf<'reveal'>> = {
  equations: (rule, lines) => {
    const { low, high, insetLow, insetHigh } = endsOfMargin(rule);
    return [
      apart(lines.low(rule.part), lines.edge(low), insetLow),
      apart(lines.edge(high), lines.high(rule.part), insetHigh),
    ];
  },
  result: (rule, lines) => apart(lines.low(rule.part), lines.edge(endsOfMargin(rule).low)),
  found: () => null,
};
