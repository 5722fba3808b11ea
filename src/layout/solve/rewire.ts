import type { Face } from '../../bed/face.ts';
import { mentionsOf } from '../../design/references.ts';
import type { Axis, Rule } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';
import { groupOf } from '../../list/grouped.ts';
import { sameItems } from '../changes.ts';
import { axesOf } from '../rule/table.ts';
import { AXES } from '../span.ts';
import {
  type Component,
  componentOf,
  linkOf,
  missingIn,
  type Network,
  type PartTable,
  split,
} from './network.ts';

/** What became of the rules; one that ties other things together than before is gone and new. */
export interface RuleChanges {
  readonly gone: readonly Rule[];
  readonly fresh: readonly Rule[];
  /** Of other measures. */
  readonly measured: readonly Rule[];
}

/** Null where rules that stayed have changed places: which of two yields may then be another. */
export function ruleChanges(
  before: readonly Rule[],
  places: ReadonlyMap<string, number>,
  now: readonly Rule[],
): RuleChanges | null {
  const gone: Rule[] = [];
  const fresh: Rule[] = [];
  const measured: Rule[] = [];
  let next = 0;
  for (const rule of now) {
    const at = places.get(rule.id);
    if (at === undefined) {
      fresh.push(rule);
      continue;
    }
    if (at < next) return null;
    for (; next < at; next++) gone.push(pick(before, next));
    next = at + 1;
    const was = pick(before, at);
    if (was === rule) continue;
    if (sameTies(was, rule)) measured.push(rule);
    else {
      gone.push(was);
      fresh.push(rule);
    }
  }
  for (; next < before.length; next++) gone.push(pick(before, next));
  return { gone, fresh, measured };
}

/** Whether two rules tie the same things together, whatever measures they hold. */
export function sameTies(a: Rule, b: Rule): boolean {
  if (a.id !== b.id || a.kind !== b.kind) return false;
  const [one, other] = [mentionsOf(a), mentionsOf(b)];
  return (
    sameItems(axesOf(a), axesOf(b)) && sameItems(one.lead, other.lead) && sameItems(one.follow, other.follow)
  );
}

export interface Rewired {
  readonly network: Network;
  /** Numbers of the components that are not what they were. */
  readonly touched: ReadonlySet<number>;
}

/**
 * The network after a change of rules. Only the components that the changed rules are in, or now tie together,
 * are made anew; the others keep their numbers.
 */
export function rewired(
  network: Network,
  { gone, fresh, measured }: RuleChanges,
  rules: readonly Rule[],
  parts: PartTable,
  face: Face,
): Rewired {
  if (gone.length === 0 && fresh.length === 0) return remeasured(network, measured);
  const unknown = new Map(network.unknown);
  for (const rule of gone) unknown.delete(rule.id);
  const links = fresh.flatMap((rule) => {
    const missing = missingIn(rule, parts, face);
    if (missing === undefined) return [linkOf(rule)];
    unknown.set(rule.id, missing);
    return [];
  });
  const touched = new Set([...gone, ...measured].flatMap((rule) => groupOf(network.ofRule, rule.id)));
  for (const { rule, lead, follow } of links) {
    for (const axis of axesOf(rule)) {
      for (const id of [...lead, ...follow]) {
        const i = network.ofPart[axis].get(id);
        if (i !== undefined) touched.add(i);
      }
    }
  }
  const kept = namesOf(touched, network);
  for (const { rule } of links) kept.rules.add(rule.id);
  for (const rule of gone) if (!links.some((link) => link.rule.id === rule.id)) kept.rules.delete(rule.id);
  const tied = rules.filter((rule) => kept.rules.has(rule.id)).map(linkOf);
  const made = AXES.flatMap((axis) => {
    const inside = new Set(kept.parts[axis]);
    const own = tied.filter(
      ({ rule, lead, follow }) =>
        axesOf(rule).includes(axis) && [...lead, ...follow].every((id) => inside.has(id)),
    );
    return split(axis, kept.parts[axis].sort(), own);
  });
  return withComponents({ ...network, unknown }, touched, made);
}

/** The network with rules exchanged for others that tie the same things together. */
function remeasured(network: Network, measured: readonly Rule[]): Rewired {
  const touched = new Set(measured.flatMap((rule) => groupOf(network.ofRule, rule.id)));
  if (touched.size === 0) return { network, touched };
  const byId = new Map(measured.map((rule) => [rule.id, rule]));
  const components = [...network.components];
  for (const i of touched) {
    const one = pick(components, i);
    components[i] = { ...one, rules: one.rules.map((rule) => byId.get(rule.id) ?? rule) };
  }
  return { network: { ...network, components }, touched };
}

/** Parts by axis, and rules, that some components hold. */
function namesOf(numbers: ReadonlySet<number>, network: Network) {
  const parts: Record<Axis, string[]> = { x: [], y: [] };
  const rules = new Set<string>();
  for (const i of numbers) {
    const component = network.components[i];
    if (!component) continue;
    parts[component.axis].push(...component.parts);
    for (const rule of component.rules) rules.add(rule.id);
  }
  return { parts, rules };
}

/** New components in the place of those that were touched; a number that is left over holds nothing. */
function withComponents(network: Network, touched: Set<number>, made: readonly Component[]): Rewired {
  const components = [...network.components];
  const ofPart = { x: new Map(network.ofPart.x), y: new Map(network.ofPart.y) };
  const ofRule = new Map(network.ofRule);
  for (const i of touched) {
    const { axis, rules } = pick(components, i);
    components[i] = componentOf(axis, [], [], []);
    for (const rule of rules)
      ofRule.set(
        rule.id,
        groupOf(ofRule, rule.id).filter((n) => n !== i),
      );
  }
  const free = [...network.free, ...touched];
  for (const component of made) {
    const i = free.pop() ?? components.length;
    touched.add(i);
    components[i] = component;
    for (const id of component.parts) ofPart[component.axis].set(id, i);
    for (const rule of component.rules) {
      // The outcome along x goes first.
      const numbers = [...groupOf(ofRule, rule.id), i];
      ofRule.set(
        rule.id,
        numbers.sort((a, b) => (pick(components, a).axis < pick(components, b).axis ? -1 : 1)),
      );
    }
  }
  return { network: { ...network, components, ofPart, ofRule, free }, touched };
}
