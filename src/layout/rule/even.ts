import { partsOfRule } from '../../design/references.ts';
import type { Edge, Rule, RuleOf } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { pick } from '../../list/at.ts';
import { apart, combine, type Linear, mean } from '../solve/linear.ts';
import { type Found, ledBy, standing } from './found.ts';
import { gapNegative, type Lines, type RuleKindOf } from './rule.ts';

type Even = RuleOf<'even'>;

/** Room before the first part, between neighbors, and after the last one. */
function rooms(rule: Even, lines: Lines): { first: Linear; between: Linear[]; last: Linear } {
  const between: Linear[] = [];
  for (let i = 1; i < rule.parts.length; i++) {
    between.push(apart(lines.low(pick(rule.parts, i)), lines.high(pick(rule.parts, i - 1))));
  }
  return {
    first: apart(lines.low(pick(rule.parts, 0)), lines.edge(rule.low)),
    between,
    last: apart(lines.edge(rule.high), lines.high(pick(rule.parts, rule.parts.length - 1))),
  };
}

const equal = (all: readonly Linear[]): Linear[] => all.slice(1).map((one, i) => apart(one, pick(all, i)));

const twice = (one: Linear): Linear => combine([[2, one]]);

/** Centers a pitch apart and the group centered; without a pitch each part centered in its share of the span. */
function centers(rule: Even, lines: Lines): Linear[] {
  const center = (part: string) => mean(lines.low(part), lines.high(part));
  const low = lines.edge(rule.low);
  const high = lines.edge(rule.high);
  if (rule.pitch === undefined) {
    return rule.parts.map((part, i) => {
      const share = (i + 0.5) / rule.parts.length;
      return combine([
        [1, center(part)],
        [share - 1, low],
        [-share, high],
      ]);
    });
  }
  const pitch = rule.pitch;
  const steps = rule.parts.slice(1).map((part, i) => apart(center(part), center(pick(rule.parts, i)), pitch));
  const { first, last } = rooms(rule, lines);
  return [...steps, apart(first, last)];
}

/**
 * Equal gaps of which one part was found elsewhere: what stands before it stays where it is, since it is there already,
 * and what comes after it is spread over what is left. Null for spacings that say more than equal gaps.
 */
function spreadAnew(rule: Even, { part, side, by, startOf }: Found): Rule[] | null {
  const { mode, parts } = rule;
  const at = parts.indexOf(part);
  if (parts.length === 1) return [ledBy(rule, by)];
  if (mode !== 'gaps' && mode !== 'most') return null;
  const [fixed, rest] =
    side === 'high' ? [parts.slice(0, at + 1), parts.slice(at + 1)] : [parts.slice(at), parts.slice(0, at)];
  const told = rest.length === 0 ? part : null;
  const placed = standing(rule, fixed, told, (one) => startOf(one) + (one === part ? by : 0));
  if (rest.length === 0) return placed;
  const end: Edge = { of: part, side };
  return [...placed, { ...rule, ...(side === 'high' ? { low: end } : { high: end }), parts: rest }];
}

/** The parts in this order spread between two edges. Result: the gap. */
export const evenRule: RuleKindOf<Even> = {
  equations: (rule, lines) => {
    const { first, between, last } = rooms(rule, lines);
    switch (rule.mode) {
      case 'gaps':
      case 'most':
        return equal([first, ...between, last]);
      case 'flush':
        return between.length === 0 ? [apart(first, last)] : [first, ...equal(between), last];
      case 'half':
        return equal([twice(first), ...between, twice(last)]);
      case 'centers':
        return centers(rule, lines);
    }
  },
  result: (rule, lines) => {
    const { first, between } = rooms(rule, lines);
    const inner = between[0];
    if (rule.mode === 'half') return inner ?? twice(first);
    return inner ?? first;
  },
  found: spreadAnew,
  stands: (rule, part, { part: from, startOf }) =>
    [rule.low.of, rule.high.of].includes(from) && rule.parts.includes(part)
      ? standing(rule, rule.parts, part, startOf)
      : [rule],
  checks: (rule, gap) => {
    const found = gapNegative(rule, gap);
    if (rule.mode === 'most' && rule.most !== undefined && gap > rule.most + SAME_LENGTH) {
      found.push({
        code: 'rule.gap-over-most',
        severity: 'warning',
        parts: partsOfRule(rule),
        figures: { rule: rule.id, gap_mm: gap, most_mm: rule.most },
      });
    }
    return found;
  },
};
