import type { Face } from '../../bed/face.ts';
import { mentionsOf } from '../../design/references.ts';
import type { Axis, Part, Rule } from '../../design/schema.ts';
import { pick, under } from '../../list/at.ts';
import { addTo, type Groups } from '../../list/grouped.ts';
import { isKnown, partOf } from '../reference.ts';
import { axesOf } from '../rule/table.ts';

/** Parts that rules tie together along one axis. */
export interface Component {
  readonly axis: Axis;
  /** By rank, then by id: leaders first. */
  readonly parts: readonly string[];
  /** Where each part stands in `parts`. */
  readonly index: ReadonlyMap<string, number>;
  /** Of each part, in the same order. */
  readonly ranks: readonly number[];
  /** In the design's order. */
  readonly rules: readonly Rule[];
  /** Where each rule stands in `rules`, by id. */
  readonly ruleIndex: ReadonlyMap<string, number>;
}

export interface Network {
  readonly components: readonly Component[];
  /** By id, rules that name something that is not there, and what; they are left out. */
  readonly unknown: ReadonlyMap<string, string>;
  /** The number of each part's component on each axis, and of those that a rule is in, by id. */
  readonly ofPart: Readonly<Record<Axis, ReadonlyMap<string, number>>>;
  readonly ofRule: ReadonlyMap<string, readonly number[]>;
  /** Numbers of components that hold nothing any more. */
  readonly free: readonly number[];
}

/** The parts there are, by id. */
export type PartTable = Pick<ReadonlyMap<string, Part>, 'get' | 'has'>;

/** A rule with the parts that lead and follow in it. */
export interface Link {
  readonly rule: Rule;
  readonly lead: readonly string[];
  readonly follow: readonly string[];
}

/**
 * Splits the parts into components per axis. Parts without rules are components of one, so that a
 * component depends on nothing outside of itself but the face.
 */
export function buildNetwork(parts: ReadonlyMap<string, Part>, rules: readonly Rule[], face: Face): Network {
  const unknown = new Map<string, string>();
  const links: Record<Axis, Link[]> = { x: [], y: [] };
  for (const rule of rules) {
    const missing = missingIn(rule, parts, face);
    if (missing !== undefined) {
      unknown.set(rule.id, missing);
      continue;
    }
    const link = linkOf(rule);
    for (const axis of axesOf(rule)) links[axis].push(link);
  }
  const order = [...parts.keys()].sort();
  const components = [...split('x', order, links.x), ...split('y', order, links.y)];
  return { components, unknown, ...numbersIn(components), free: [] };
}

function numbersIn(components: readonly Component[]): Pick<Network, 'ofPart' | 'ofRule'> {
  const ofPart: Record<Axis, Map<string, number>> = { x: new Map(), y: new Map() };
  const ofRule: Groups<string, number> = new Map();
  components.forEach(({ axis, parts, rules }, i) => {
    for (const id of parts) ofPart[axis].set(id, i);
    for (const rule of rules) addTo(ofRule, rule.id, i);
  });
  return { ofPart, ofRule };
}

/** The first thing that a rule names and that is not there. */
export function missingIn(rule: Rule, parts: PartTable, face: Face): string | undefined {
  const { lead, follow } = mentionsOf(rule);
  return [...lead, ...follow].find((of) => !isKnown(of, face, parts));
}

export function linkOf(rule: Rule): Link {
  const { lead, follow } = mentionsOf(rule);
  return { rule, lead: ids(lead), follow: ids(follow) };
}

function ids(references: readonly string[]): string[] {
  const found = new Set<string>();
  for (const of of references) {
    const part = partOf(of);
    if (part !== null) found.add(part);
  }
  return [...found];
}

/** The components of some parts, in the order of their ids, and of the rules that tie no others. */
export function split(axis: Axis, order: readonly string[], links: readonly Link[]): Component[] {
  const number = new Map(order.map((id, i) => [id, i]));
  const parent = order.map((_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = pick(parent, pick(parent, at));
      at = pick(parent, at);
    }
    return at;
  };
  const numbersOf = (link: Link) => [...link.lead, ...link.follow].map((id) => under(number, id));
  for (const link of links) {
    const [first, ...rest] = numbersOf(link);
    if (first === undefined) continue;
    // The lower number stays the root, so that a component is named by its first part.
    for (const other of rest) {
      const a = root(first);
      const b = root(other);
      parent[Math.max(a, b)] = Math.min(a, b);
    }
  }
  const members = new Map<number, { parts: string[]; links: Link[] }>();
  order.forEach((id, i) => {
    const at = root(i);
    const group = members.get(at) ?? { parts: [], links: [] };
    members.set(at, group);
    group.parts.push(id);
  });
  const partless: Component[] = [];
  for (const link of links) {
    const first = numbersOf(link)[0];
    if (first !== undefined) members.get(root(first))?.links.push(link);
    // Between face and levels only: it holds or it does not, and moves nothing.
    else partless.push(componentOf(axis, [], [], [link.rule]));
  }
  const groups = [...members.values()].map((group) => {
    const ranks = rank(group.parts, group.links);
    const sorted = [...group.parts].sort((a, b) => under(ranks, a) - under(ranks, b) || (a < b ? -1 : 1));
    return componentOf(
      axis,
      sorted,
      sorted.map((id) => under(ranks, id)),
      group.links.map((link) => link.rule),
    );
  });
  return [...groups, ...partless];
}

export const componentOf = (
  axis: Axis,
  parts: readonly string[],
  ranks: readonly number[],
  rules: readonly Rule[],
): Component => ({
  axis,
  parts,
  index: new Map(parts.map((id, i) => [id, i])),
  ranks,
  rules,
  ruleIndex: new Map(rules.map((rule, i) => [rule.id, i])),
});

/**
 * Leaders have lower ranks than their followers: the longest way from a part that follows nothing. A
 * ring of parts that follow each other is opened at the part with the least id.
 */
function rank(parts: readonly string[], links: readonly Link[]): Map<string, number> {
  const followers = new Map<string, Set<string>>();
  const waiting = new Map<string, number>(parts.map((id) => [id, 0]));
  for (const { lead, follow } of links) {
    for (const a of lead) {
      const known = followers.get(a) ?? new Set();
      followers.set(a, known);
      for (const b of follow) {
        if (a === b || known.has(b)) continue;
        known.add(b);
        waiting.set(b, under(waiting, b) + 1);
      }
    }
  }
  const ranks = new Map<string, number>();
  let ready = parts.filter((id) => waiting.get(id) === 0);
  let next = 0;
  for (let level = 0; ranks.size < parts.length; level++) {
    if (ready.length === 0) {
      while (ranks.has(pick(parts, next))) next++;
      ready = [pick(parts, next)];
    }
    const following: string[] = [];
    for (const id of ready) {
      ranks.set(id, level);
      for (const follower of followers.get(id) ?? []) {
        const left = under(waiting, follower) - 1;
        waiting.set(follower, left);
        if (left === 0 && !ranks.has(follower)) following.push(follower);
      }
    }
    ready = following.filter((id) => !ranks.has(id));
  }
  return ranks;
}

/** Names a component across runs of the solver. */
export const componentKey = (component: Component): string =>
  `${component.axis}:${component.parts[0] ?? `rule ${component.rules[0]?.id}`}`;
