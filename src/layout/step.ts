import type { Face } from '../bed/face.ts';
import { orderChecks } from '../check/check.ts';
import type { Part, Rule } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import { at, entryAt, pick, under } from '../list/at.ts';
import { boxesToEnds, solvedBox, withBoxes } from './boxes.ts';
import { changedAt, kept, patched, sameNames } from './changes.ts';
import { checkPlacings, checkSome } from './check/checks.ts';
import { toldOnce } from './fill/toldOnce.ts';
import { allChecks, finishIdsOf } from './gather.ts';
import type { LayoutInput } from './input.ts';
import { cutAround, type PlacedPart, type Placement, placeParts, placeSome } from './place/place.ts';
import { withStops } from './place/stopping.ts';
import type { Remembered } from './remembered.ts';
import type { Network } from './solve/network.ts';
import { type RuleChanges, rewired, ruleChanges } from './solve/rewire.ts';
import { type SolvedNetwork, solveSome } from './solve/solveAll.ts';
import { type JudgedRule, judgedRule, type RulePlaces, rulePlaces } from './states.ts';

/**
 * The layout after a change that leaves the parts what they are called, such as a step of a drag: only what is
 * tied to the change is solved, laid and checked again. Null where more than that may have changed.
 */
export function stepFrom(input: LayoutInput, last: Remembered): Remembered | null {
  const { design, face, stocks, sizes, held, keepClears } = input;
  const { parts, rules, finishes } = design;
  if (last.face !== face || last.stocks !== stocks || last.sizes !== sizes) return null;
  const finishIds = finishIdsOf(finishes, last);
  const newParts = changedAt(last.parts, parts, sameNames);
  const changes = ruleChanges(last.rules, last.rulePlaces, rules);
  if (finishIds !== last.finishIds || !newParts || !changes) return null;

  const partOf = (id: string): Part => pick(parts, under(last.places, id));
  const changedParts = newParts.flatMap((i) => pick(parts, i));
  const table = {
    get: (id: string) => entryAt(parts, last.places.get(id)),
    has: (id: string) => last.places.has(id),
  };
  const { network, touched: ruled } = rewired(last.network, changes, rules, table, face);
  const touched = new Set([
    ...ruled,
    ...numbersOf(network, [...changedParts.map((part) => part.id), ...handedOver(last.held, held)]),
  ]);
  const anew = solveSome({ face, stocks, sizes, held }, network, partOf, last.solved, touched);
  const now: SolvedNetwork = { network, solved: patched(last.solved, anew) };

  const shifted = new Set(changedParts);
  for (const i of anew.keys()) {
    for (const id of pick(network.components, i).parts) shifted.add(partOf(id));
  }
  const moved = new Map<string, Box>();
  for (const part of shifted) {
    const was = last.boxes.get(part.id);
    const box = solvedBox(part, now, was);
    if (box !== was) moved.set(part.id, box);
  }
  const boxes = withBoxes(last.boxes, moved);
  const { placement, checking } = placedAfter(input, last, finishIds, boxes, [...shifted]);

  const { judged, places } = judgedAfter(rules, changes, now, anew.keys(), last);
  const found = kept(last.found, allChecks({ judged, placement, checking }));
  const layout = {
    boxes: boxesToEnds(boxes, placement, last.layout.boxes),
    parts: kept(
      last.layout.parts,
      placement === last.placement ? last.layout.parts : placement.placings.map((one) => one.laid),
    ),
    rules: judged === last.judged ? last.layout.rules : judged.map((one) => one.state),
    checks: found === last.found ? last.layout.checks : orderChecks(toldOnce(found, parts)),
  };
  return {
    ...last,
    ...{ held, keepClears, parts, rules, finishes, finishIds },
    ...{ rulePlaces: places, network, solved: now.solved, boxes, placement, checking, judged, found, layout },
  };
}

/** The components on both axes that parts are in. */
function numbersOf(network: Network, ids: readonly string[]): Set<number> {
  const found = new Set<number>();
  for (const id of ids) {
    for (const numbers of [network.ofPart.x, network.ofPart.y]) {
      const i = numbers.get(id);
      if (i !== undefined) found.add(i);
    }
  }
  return found;
}

/** What is said of the rules after a change; those in other components than the changed ones stand as they did. */
function judgedAfter(
  rules: readonly Rule[],
  { gone, fresh, measured }: RuleChanges,
  now: SolvedNetwork,
  changed: Iterable<number>,
  last: Remembered,
): { readonly judged: readonly JudgedRule[]; readonly places: RulePlaces } {
  const tied = new Set([...fresh, ...measured].map((rule) => rule.id));
  for (const i of changed) for (const { id } of pick(now.network.components, i).rules) tied.add(id);
  if (gone.length === 0 && fresh.length === 0) {
    const places = last.rulePlaces;
    const anew = new Map<number, JudgedRule>();
    for (const id of tied) {
      const i = under(places, id);
      anew.set(i, judgedRule(pick(rules, i), rules, places, now));
    }
    return { judged: patched(last.judged, anew), places };
  }
  const places = rulePlaces(rules);
  const judged = rules.map((rule) => {
    const before = tied.has(rule.id) ? undefined : entryAt(last.judged, last.rulePlaces.get(rule.id));
    return before ?? judgedRule(rule, rules, places, now);
  });
  return { judged, places };
}

/** Parts that the hand has taken or let go. */
function handedOver(was: ReadonlySet<string> | undefined, is: ReadonlySet<string> | undefined): string[] {
  if (was === is) return [];
  const taken = [...(is ?? [])].filter((id) => !was?.has(id));
  return [...taken, ...[...(was ?? [])].filter((id) => !is?.has(id))];
}

/** Places and checks of what may have moved; of everything where more came of it. */
function placedAfter(
  { design, face, stocks, keepClears }: LayoutInput,
  last: Remembered,
  finishes: ReadonlySet<string>,
  boxes: ReadonlyMap<string, Box>,
  shifted: readonly Part[],
): Pick<Remembered, 'placement' | 'checking'> {
  const context = { face, keepClears };
  const input = { boxes, face, stocks, finishes };
  const anew = placeSome(input, last.placement, shifted);
  const whole = () => {
    const placement = placeParts({ ...input, parts: design.parts }, last.placement);
    return { placement, checking: checkPlacings(placement.placings, context, last.checking) };
  };
  if (!anew) return whole();
  const cut = withTheirStops(last.placement, anew, face);
  const counted = [...cut].every(
    ([rank, one]) => one.placings.length === pick(last.placement.placed, rank).placings.length,
  );
  if (!counted) return whole();
  const { placement, moved } = withPlaced(last.placement, cut);
  return { placement, checking: checkSome(placement.placings, context, last.checking, moved) };
}

/** What changes with parts laid anew: their ends, and those of others, are brought to what they stop at. */
function withTheirStops(
  { placed, ranks }: Placement,
  anew: ReadonlyMap<number, PlacedPart>,
  face: Face,
): ReadonlyMap<number, PlacedPart> {
  const changed = new Map<number, PlacedPart>();
  withStops(patched(placed, anew), ranks, face, cutAround).forEach((one, rank) => {
    if (one !== placed[rank]) changed.set(rank, one);
  });
  return changed;
}

/** The placement with some parts laid anew, and the numbers of their placings. */
function withPlaced(before: Placement, anew: ReadonlyMap<number, PlacedPart>) {
  if (anew.size === 0) return { placement: before, moved: [] };
  const placings = [...before.placings];
  const moved: number[] = [];
  for (const [rank, part] of anew) {
    const start = at(before.starts, rank);
    part.placings.forEach((placing, i) => {
      placings[start + i] = placing;
      moved.push(start + i);
    });
  }
  return { placement: { ...before, placed: patched(before.placed, anew), placings }, moved };
}
