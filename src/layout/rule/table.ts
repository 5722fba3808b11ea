import type { Check } from '../../check/check.ts';
import { isAlong } from '../../design/rule/table.ts';
import type { Axis, Rule, RuleKind, RuleOf } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import type { Linear } from '../solve/linear.ts';
import { AXES } from '../span.ts';
import { betweenRule } from './between.ts';
import { centerRule } from './center.ts';
import { evenRule } from './even.ts';
import { type Found, ledBy } from './found.ts';
import { gapRule } from './gap.ts';
import { gradedRule } from './graded.ts';
import { mirrorRule } from './mirror.ts';
import { revealRule } from './reveal.ts';
import type { Lines, RuleKindOf } from './rule.ts';
import { sameRule } from './same.ts';
import { setRule } from './set.ts';

/** Every kind of rule; a kind without a line here does not compile. */
const KINDS: { readonly [K in RuleKind]: RuleKindOf<RuleOf<K>> } = {
  set: setRule,
  gap: gapRule,
  center: centerRule,
  between: betweenRule,
  even: evenRule,
  mirror: mirrorRule,
  same: sameRule,
  reveal: revealRule,
  graded: gradedRule,
};

// The table is keyed by the rule's own kind, which the compiler cannot follow through a union.
const kindOf = (rule: Rule): RuleKindOf<Rule> => KINDS[rule.kind] as unknown as RuleKindOf<Rule>;

export const axesOf = (rule: Rule): readonly Axis[] => AXES.filter((axis) => isAlong(rule, axis));
export const equationsOf = (rule: Rule, lines: Lines): Linear[] => kindOf(rule).equations(rule, lines);
export const keepsOf = (rule: Rule, lines: Lines): Linear[] => kindOf(rule).keeps?.(rule, lines) ?? [];
export const choiceOf = (rule: Rule, lines: Lines): string | null =>
  kindOf(rule).choice?.(rule, lines) ?? null;
export const resultOf = (rule: Rule, lines: Lines): Linear | null => kindOf(rule).result(rule, lines);
export const checksOf = (rule: Rule, result: Mm): Check[] => kindOf(rule).checks?.(rule, result) ?? [];

/** The field of a rule with the edge that holds one end of a part; null where it holds none. */
export const tieOf = (rule: Rule, axis: Axis, part: string, side: 'low' | 'high'): string | null =>
  isAlong(rule, axis) ? (kindOf(rule).tie?.(rule, part, side) ?? null) : null;
export function foundIn(rule: Rule, found: Found): readonly Rule[] | null {
  const kind = kindOf(rule);
  return kind.found ? kind.found(rule, found) : [ledBy(rule, found.by)];
}
export const standsIn = (rule: Rule, part: string, found: Found): readonly Rule[] =>
  kindOf(rule).stands?.(rule, part, found) ?? [rule];
