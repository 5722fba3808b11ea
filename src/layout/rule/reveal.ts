import type { Edge, RuleOf } from '../../design/schema.ts';
import { apart } from '../solve/linear.ts';
import type { RuleKindOf } from './rule.ts';

type Reveal = RuleOf<'reveal'>;

const side = (rule: Reveal, which: 'low' | 'high'): Edge => ({
  of: rule.inside,
  side: which,
  inner: rule.inner,
});

/** The same margin on all four sides inside something. Result: the margin. */
export const revealRule: RuleKindOf<Reveal> = {
  equations: (rule, lines) => [
    apart(lines.low(rule.part), lines.edge(side(rule, 'low')), rule.margin),
    apart(lines.edge(side(rule, 'high')), lines.high(rule.part), rule.margin),
  ],
  result: (rule, lines) => apart(lines.low(rule.part), lines.edge(side(rule, 'low'))),
};
