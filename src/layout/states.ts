import type { Check } from '../check/check.ts';
import { partsOfRule } from '../design/references.ts';
import type { Rule } from '../design/schema.ts';
import { entryAt, pick, under } from '../list/at.ts';
import { groupOf } from '../list/grouped.ts';
import type { RuleState } from './laid.ts';
import { checksOf } from './rule/table.ts';
import type { Outcome } from './solve/component.ts';
import type { SolvedNetwork } from './solve/solveAll.ts';

/** How a rule came out, and what there is to say about it. */
export interface JudgedRule {
  readonly rule: Rule;
  readonly state: RuleState;
  readonly checks: readonly Check[];
}

/** Places of the rules in the design, by id. */
export type RulePlaces = ReadonlyMap<string, number>;

export const rulePlaces = (rules: readonly Rule[]): RulePlaces =>
  new Map(rules.map((rule, i) => [rule.id, i]));

/** A rule on both axes holds where it holds on both; it is left out only on the axis where it cannot. */
export function judgedRule(
  rule: Rule,
  rules: readonly Rule[],
  places: RulePlaces,
  { network, solved }: SolvedNetwork,
): JudgedRule {
  const outcomes = groupOf(network.ofRule, rule.id).flatMap((i): Outcome[] => {
    const at = pick(network.components, i).ruleIndex.get(rule.id);
    const outcome = entryAt(pick(solved, i).outcomes, at);
    return outcome ? [outcome] : [];
  });
  const fights = new Set(outcomes.flatMap((one) => one.fights ?? []));
  const state = {
    id: rule.id,
    holds: outcomes.length > 0 && outcomes.every((one) => one.fights === null),
    fights: [...fights].sort((a, b) => under(places, a) - under(places, b)),
    result: outcomes[0]?.result ?? null,
  };
  return { rule, state, checks: checksOfRule(rule, state, rules, places, network.unknown) };
}

/** Checks of rules name the parts that the rules place; the rules themselves stand in the figures. */
function checksOfRule(
  rule: Rule,
  state: RuleState,
  rules: readonly Rule[],
  places: RulePlaces,
  unknown: SolvedNetwork['network']['unknown'],
): Check[] {
  const of = unknown.get(rule.id);
  if (of !== undefined) {
    const parts = partsOfRule(rule).filter((part) => part !== of);
    return [{ code: 'rule.unknown-part', severity: 'warning', parts, figures: { rule: rule.id, part: of } }];
  }
  if (!state.holds) {
    const fought = state.fights.map((id) => pick(rules, under(places, id)));
    const parts = [...new Set([rule, ...fought].flatMap(partsOfRule))];
    const figures = { rule: rule.id, fights: state.fights.join(' ') };
    return [{ code: 'rule.impossible', severity: 'error', parts, figures }];
  }
  return state.result === null ? [] : checksOf(rule, state.result);
}
