import { orderChecks } from '../check/check.ts';
import type { Part } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import { solvedBox } from './boxes.ts';
import { changedAt, kept, patched, sameNames } from './changes.ts';
import { checkPlacings, checkSome } from './check/checks.ts';
import { allChecks, finishIdsOf } from './gather.ts';
import type { LayoutInput } from './layout.ts';
import type { Remembered } from './memory.ts';
import { type PlacedPart, type Placement, placeParts, placeSome } from './place/place.ts';
import { type Network, sameTies, withRules } from './solve/network.ts';
import { type SolvedNetwork, solveSome } from './solve/solveAll.ts';
import { judgedRule } from './states.ts';

/**
 * The layout after a change that names and ties leave as they were, such as a step of a drag: only what is tied
 * to the change is solved, laid and checked again. Null where more than that may have changed.
 */
export function stepFrom(input: LayoutInput, last: Remembered): Remembered | null {
  const { design, face, stocks, sizes, held, keepClears } = input;
  const { parts, rules, finishes } = design;
  if (last.face !== face || last.stocks !== stocks || last.sizes !== sizes) return null;
  const finishIds = finishIdsOf(finishes, last);
  const newParts = changedAt(last.parts, parts, sameNames);
  const newRules = changedAt(last.rules, rules, sameTies);
  if (finishIds !== last.finishIds || !newParts || !newRules) return null;

  const partOf = (id: string): Part | undefined => parts[last.places.get(id) ?? -1];
  const changedParts = newParts.flatMap((i) => parts[i] ?? []);
  const changedRules = newRules.flatMap((i) => rules[i] ?? []);
  const network = withRules(last.network, changedRules);
  const touched = touchedBy(network, [
    ...changedParts.map((part) => part.id),
    ...handedOver(last.held, held),
  ]);
  for (const rule of changedRules) for (const i of network.ofRule.get(rule.id) ?? []) touched.add(i);
  const anew = solveSome({ face, stocks, sizes, held }, network, partOf, last.solved, touched);
  const now: SolvedNetwork = { network, solved: patched(last.solved, anew) };

  const shifted = new Set(changedParts);
  for (const i of anew.keys()) {
    for (const id of network.components[i]?.parts ?? []) shifted.add(partOf(id) as Part);
  }
  const moved = new Map<string, Box>();
  for (const part of shifted) {
    const was = last.layout.boxes.get(part.id);
    const box = solvedBox(part, now, was);
    if (box !== was) moved.set(part.id, box);
  }
  const boxes = moved.size > 0 ? new Map([...last.layout.boxes, ...moved]) : last.layout.boxes;
  const { placement, checking } = placedAfter(input, last, finishIds, boxes, [...shifted]);

  const tied = new Set(newRules);
  for (const i of anew.keys()) {
    for (const { id } of network.components[i]?.rules ?? []) tied.add(last.rulePlaces.get(id) ?? -1);
  }
  const verdicts = [...tied].flatMap((i) => {
    const rule = rules[i];
    return rule ? [[i, judgedRule(rule, rules, last.rulePlaces, now)] as const] : [];
  });
  const judged = patched(last.judged, new Map(verdicts));
  const found = kept(last.found, allChecks({ judged, placement, checking }));
  const layout = {
    boxes,
    parts: kept(
      last.layout.parts,
      placement === last.placement ? last.layout.parts : placement.placings.map((one) => one.laid),
    ),
    rules: verdicts.length > 0 ? judged.map((one) => one.state) : last.layout.rules,
    checks: found === last.found ? last.layout.checks : orderChecks(found),
  };
  return {
    ...last,
    ...{ held, keepClears, parts, rules, finishes, finishIds },
    ...{ network, solved: now.solved, placement, checking, judged, found, layout },
  };
}

/** The components on both axes that parts are in. */
function touchedBy(network: Network, ids: readonly string[]): Set<number> {
  const found = new Set<number>();
  for (const id of ids) {
    for (const numbers of [network.ofPart.x, network.ofPart.y]) {
      const i = numbers.get(id);
      if (i !== undefined) found.add(i);
    }
  }
  return found;
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
  if (!anew) {
    const placement = placeParts({ ...input, parts: design.parts }, last.placement);
    return { placement, checking: checkPlacings(placement.placings, context, last.checking) };
  }
  const { placement, moved } = withPlaced(last.placement, anew);
  return { placement, checking: checkSome(placement.placings, context, last.checking, moved) };
}

/** The placement with some parts laid anew, and the numbers of their placings. */
function withPlaced(before: Placement, anew: ReadonlyMap<number, PlacedPart>) {
  if (anew.size === 0) return { placement: before, moved: [] };
  const placings = [...before.placings];
  const moved: number[] = [];
  for (const [rank, part] of anew) {
    const start = before.starts[rank] ?? 0;
    part.placings.forEach((placing, i) => {
      placings[start + i] = placing;
      moved.push(start + i);
    });
  }
  return { placement: { ...before, placed: patched(before.placed, anew), placings }, moved };
}
