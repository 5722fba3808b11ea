import type { RuleOf } from '../../design/schema.ts';
import { apart, combine } from '../solve/linear.ts';
import type { RuleKindOf } from './rule.ts';

/** A gap that is there already, once more: what is set last follows those before it. Result: the gap. */
export const gapRule: RuleKindOf<RuleOf<'gap'>> = {
  equations: (rule, lines) => [
    combine([
      [1, apart(lines.edge(rule.edge), lines.edge(rule.from))],
      [-1, apart(lines.edge(rule.likeEdge), lines.edge(rule.likeFrom))],
    ]),
  ],
  result: (rule, lines) => apart(lines.edge(rule.edge), lines.edge(rule.from)),
};
