import type { RuleOf } from '../../design/schema.ts';
import { apart, combine } from '../solve/linear.ts';
import { ledBy } from './found.ts';
import type { RuleKindOf } from './rule.ts';

/** The twin is the mirror image of the part about a line, so along the line both take the same stretch. */
export const mirrorRule: RuleKindOf<RuleOf<'mirror'>> = {
  equations: (rule, lines) => {
    if (lines.axis !== rule.axis) {
      return [
        apart(lines.low(rule.twin), lines.low(rule.part)),
        apart(lines.high(rule.twin), lines.high(rule.part)),
      ];
    }
    const about = lines.edge(rule.about);
    return [
      combine([
        [1, lines.low(rule.twin)],
        [1, lines.high(rule.part)],
        [-2, about],
      ]),
      combine([
        [1, lines.high(rule.twin)],
        [1, lines.low(rule.part)],
        [-2, about],
      ]),
    ];
  },
  result: () => null,
  // What is mirrored moves twice as far as the line.
  found: (rule, { by }) => [ledBy(rule, by / 2)],
};
