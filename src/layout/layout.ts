import type { Face } from '../bed/face.ts';
import { type Check, orderChecks } from '../check/check.ts';
import { partsOfRule } from '../design/references.ts';
import type { Design, KeepClear, Part, Rule } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { checkPlacings } from './check/checks.ts';
import type { Layout, RuleState } from './laid.ts';
import { createMemory, type LayoutMemory, type Remembered } from './memory.ts';
import { type PlacedPart, placeParts } from './place/place.ts';
import { checksOf } from './rule/table.ts';
import { type Outcome, type SolvedComponent, solveComponent } from './solve/component.ts';
import { sameComponentInput } from './solve/input.ts';
import { buildNetwork, componentKey, type Network } from './solve/network.ts';
import { AXES } from './span.ts';
import { type Sizes, structureOf } from './structure.ts';

export interface LayoutInput {
  readonly design: Pick<Design, 'parts' | 'rules' | 'finishes'>;
  readonly face: Face;
  readonly keepClears: readonly KeepClear[];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly sizes?: Sizes;
  /**
   * Parts that the hand holds just now (dragged or typed): others give way to them. Only while the hand
   * holds them; once the solved boxes are written into the design (`settled`) nothing depends on it.
   */
  readonly held?: ReadonlySet<string>;
}

/**
 * Where everything is: solves the rules on each axis, lays the parts on their levels and on each other,
 * and checks them.
 *
 * The boxes of the design are where parts would like to stay. Rules that hold together hold exactly;
 * what they leave free stays where it was. A rule that contradicts rules before it in the design's list
 * is left out and named together with those.
 */
export function layOut(input: LayoutInput, memory: LayoutMemory = createMemory()): Layout {
  const { design, face } = input;
  const last = memory.last;
  const byId = new Map(design.parts.map((part) => [part.id, part]));
  const network = networkOf(input, byId, last);
  const solved = solveAll(input, byId, network, last);
  const boxes = boxesOf(design.parts, network, solved, last);
  const finishIds = finishIdsOf(design.finishes, last);
  const placement = placeParts(
    { parts: design.parts, byId, boxes, face, stocks: input.stocks, finishes: finishIds },
    last?.placed,
  );
  const placings = placement.placed.flatMap((placed) => placed.placings);
  const checked = checkPlacings(placings, { face, keepClears: input.keepClears }, last?.checked);
  const rules = statesOf(design.rules, network, solved);

  const placed = new Map<string, PlacedPart>();
  for (const one of placement.placed) placed.set(one.from.part.id, one);
  memory.last = {
    rules: design.rules,
    face,
    parts: design.parts,
    network,
    finishes: design.finishes,
    finishIds,
    solved,
    boxes,
    placed,
    checked,
  };
  return {
    boxes,
    parts: placings.map((placing) => placing.laid),
    rules,
    checks: orderChecks([
      ...ruleChecks(design.rules, rules, network),
      ...placement.checks,
      ...placement.placed.flatMap((one) => one.checks),
      ...[...checked.values()].flatMap((one) => one.checks),
    ]),
  };
}

function networkOf(input: LayoutInput, byId: ReadonlyMap<string, Part>, last: Remembered | null): Network {
  const { design, face } = input;
  if (last && last.rules === design.rules && last.face === face && sameNames(last.parts, design.parts)) {
    return last.network;
  }
  return buildNetwork(byId, design.rules, face);
}

/** Same ids in the same order, and the same arrays: what references can name has not changed. */
function sameNames(a: Design['parts'], b: Design['parts']): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  return a.every((part, i) => {
    const other = b[i];
    if (part === other) return true;
    if (other === undefined || part.id !== other.id) return false;
    if (part.kind !== 'array' || other.kind !== 'array') return part.kind === other.kind;
    return part.across === other.across && part.up === other.up;
  });
}

function solveAll(
  input: LayoutInput,
  byId: ReadonlyMap<string, Part>,
  network: Network,
  last: Remembered | null,
): Map<string, SolvedComponent> {
  const { face, stocks, sizes, held } = input;
  const solved = new Map<string, SolvedComponent>();
  for (const component of network.components) {
    const parts = component.parts.flatMap((id) => byId.get(id) ?? []);
    const now = {
      component,
      face,
      stocks,
      parts,
      structures: parts.map((part) => structureOf(part, component.axis, stocks, sizes)),
      held: parts.map((part) => held?.has(part.id) ?? false),
    };
    const key = componentKey(component);
    const before = last?.solved.get(key);
    solved.set(key, before && sameComponentInput(before.input, now) ? before : solveComponent(now, before));
  }
  return solved;
}

/** Ids of the finishes; the same set while they stay the same, so that a change of color places nothing anew. */
function finishIdsOf(finishes: Design['finishes'], last: Remembered | null): ReadonlySet<string> {
  if (last?.finishes === finishes) return last.finishIds;
  const ids = new Set(finishes.map((finish) => finish.id));
  const same = last?.finishIds.size === ids.size && [...ids].every((id) => last.finishIds.has(id));
  return same ? last.finishIds : ids;
}

/** Solved boxes in the design's order; a box that came out as before is the same object. */
function boxesOf(
  parts: Design['parts'],
  network: Network,
  solved: ReadonlyMap<string, SolvedComponent>,
  last: Remembered | null,
): Map<string, Box> {
  const found: Record<'x' | 'y', Map<string, { readonly start: Mm; readonly size: Mm }>> = {
    x: new Map(),
    y: new Map(),
  };
  for (const component of network.components) {
    const placed = solved.get(componentKey(component))?.placed ?? [];
    component.parts.forEach((id, i) => {
      const place = placed[i];
      if (place) found[component.axis].set(id, place);
    });
  }
  const boxes = new Map<string, Box>();
  for (const part of parts) {
    const across = found.x.get(part.id);
    const up = found.y.get(part.id);
    const box = {
      x: across?.start ?? part.box.x,
      y: up?.start ?? part.box.y,
      w: across?.size ?? part.box.w,
      h: up?.size ?? part.box.h,
    };
    const same = [last?.boxes.get(part.id), part.box].find((b) => b !== undefined && sameBox(b, box));
    boxes.set(part.id, same ?? box);
  }
  return boxes;
}

const sameBox = (a: Box, b: Box): boolean => a.x === b.x && a.y === b.y && a.w === b.w && a.h === b.h;

/** A rule on both axes holds where it holds on both; it is left out only on the axis where it cannot. */
function statesOf(
  rules: readonly Rule[],
  network: Network,
  solved: ReadonlyMap<string, SolvedComponent>,
): RuleState[] {
  const outcomes = new Map<Rule, Outcome[]>();
  for (const axis of AXES) {
    for (const component of network.components) {
      if (component.axis !== axis) continue;
      for (const outcome of solved.get(componentKey(component))?.outcomes ?? []) {
        outcomes.set(outcome.rule, [...(outcomes.get(outcome.rule) ?? []), outcome]);
      }
    }
  }
  const order = new Map(rules.map((rule, i) => [rule.id, i]));
  return rules.map((rule) => {
    const found = outcomes.get(rule) ?? [];
    const fights = new Set(found.flatMap((one) => one.fights ?? []));
    return {
      id: rule.id,
      holds: found.length > 0 && found.every((one) => one.fights === null),
      fights: [...fights].sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0)),
      result: found[0]?.result ?? null,
    };
  });
}

/** Checks of rules name the parts that the rules place; the rules themselves stand in the figures. */
function ruleChecks(rules: readonly Rule[], states: readonly RuleState[], network: Network): Check[] {
  const unknown = new Map(network.unknown.map(({ rule, of }) => [rule.id, of]));
  const byId = new Map(rules.map((rule) => [rule.id, rule]));
  return rules.flatMap((rule, i): Check[] => {
    const state = states[i];
    const of = unknown.get(rule.id);
    if (of !== undefined) {
      const parts = partsOfRule(rule).filter((part) => part !== of);
      return [
        { code: 'rule.unknown-part', severity: 'warning', parts, figures: { rule: rule.id, part: of } },
      ];
    }
    if (state && !state.holds) {
      const all = [rule, ...state.fights.flatMap((id) => byId.get(id) ?? [])];
      const parts = [...new Set(all.flatMap(partsOfRule))];
      const figures = { rule: rule.id, fights: state.fights.join(' ') };
      return [{ code: 'rule.impossible', severity: 'error', parts, figures }];
    }
    return state?.result == null ? [] : checksOf(rule, state.result);
  });
}
