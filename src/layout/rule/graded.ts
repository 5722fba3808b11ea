import type { RuleOf } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';
import { apart, combine } from '../solve/linear.ts';
import type { Lines, RuleKindOf } from './rule.ts';

type Graded = RuleOf<'graded'>;

const size = (lines: Lines, part: string) => apart(lines.high(part), lines.low(part));

/** Sizes in a given ratio, filling a span with fixed gaps between. Result: the first part's size. */
export const gradedRule: RuleKindOf<Graded> = {
  equations: (rule, lines) => {
    const first = pick(rule.parts, 0);
    const ratio = (i: number) => rule.ratio[i] ?? 1;
    const found = [apart(lines.low(first), lines.edge(rule.low))];
    for (let i = 1; i < rule.parts.length; i++) {
      const part = pick(rule.parts, i);
      found.push(apart(lines.low(part), lines.high(pick(rule.parts, i - 1)), rule.gap));
      found.push(
        combine([
          [ratio(0), size(lines, part)],
          [-ratio(i), size(lines, first)],
        ]),
      );
    }
    found.push(apart(lines.edge(rule.high), lines.high(pick(rule.parts, rule.parts.length - 1))));
    return found;
  },
  result: (rule, lines) => size(lines, pick(rule.parts, 0)),
  found: () => null,
};
