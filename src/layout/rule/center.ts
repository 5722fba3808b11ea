import type { RuleOf } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';
import { apart, combine, mean } from '../solve/linear.ts';
import { middle } from '../span.ts';
import type { BlockEnds, Lines, RuleKindOf } from './rule.ts';

type Center = RuleOf<'center'>;

/** The parts that make the block's ends; of equals the one named first. */
function ends(rule: Center, lines: Lines): BlockEnds {
  const chosen = lines.chosen(rule.id);
  if (chosen) return chosen;
  let low = pick(rule.parts, 0);
  let high = low;
  for (const part of rule.parts) {
    if (lines.guess(part).low < lines.guess(low).low) low = part;
    if (lines.guess(part).high > lines.guess(high).high) high = part;
  }
  return { low, high, levelLow: [], levelHigh: [] };
}

/** The parts as one block, centered between two edges. Result: the margin left at each side. */
export const centerRule: RuleKindOf<Center> = {
  equations: (rule, lines) => {
    const block = ends(rule, lines);
    return [
      combine([
        [1, lines.low(block.low)],
        [1, lines.high(block.high)],
        [-1, lines.edge(rule.low)],
        [-1, lines.edge(rule.high)],
      ]),
      ...block.levelLow.map((part) => apart(lines.low(part), lines.low(block.low))),
      ...block.levelHigh.map((part) => apart(lines.high(part), lines.high(block.high))),
    ];
  },
  // A block keeps its inner arrangement while it moves, unless it is to be arranged anew.
  keeps: (rule, lines) => {
    if (lines.chosen(rule.id)) return [];
    const first = pick(rule.parts, 0);
    const center = (part: string) => mean(lines.low(part), lines.high(part));
    return rule.parts
      .slice(1)
      .map((part) =>
        apart(center(part), center(first), middle(lines.guess(part)) - middle(lines.guess(first))),
      );
  },
  choice: (rule, lines) => {
    const { low, high, levelLow, levelHigh } = ends(rule, lines);
    return [[low, ...levelLow].join('='), [high, ...levelHigh].join('=')].join('|');
  },
  result: (rule, lines) => apart(lines.low(ends(rule, lines).low), lines.edge(rule.low)),
};
