import type { RuleOf } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';
import { apart } from '../solve/linear.ts';
import type { Lines, RuleKindOf } from './rule.ts';

const size = (lines: Lines, part: string) => apart(lines.high(part), lines.low(part));

/** All as wide (or high) as the first. Result: that size. */
export const sameRule: RuleKindOf<RuleOf<'same'>> = {
  equations: (rule, lines) =>
    rule.parts.slice(1).map((part) => apart(size(lines, part), size(lines, pick(rule.parts, 0)))),
  result: (rule, lines) => size(lines, pick(rule.parts, 0)),
  found: () => null,
};
