import type { Face } from '../bed/face.ts';
import { orderChecks } from '../check/check.ts';
import type { Design, KeepClear } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import type { Stock } from '../materials/types.ts';
import { solvedBox } from './boxes.ts';
import { changedAt, kept, placesOf, sameNames } from './changes.ts';
import { checkPlacings } from './check/checks.ts';
import { allChecks, finishIdsOf } from './gather.ts';
import type { Layout } from './laid.ts';
import { createMemory, type LayoutMemory, type Remembered } from './memory.ts';
import { placeParts } from './place/place.ts';
import { buildNetwork, sameTies, withRules } from './solve/network.ts';
import { solveAll } from './solve/solveAll.ts';
import { judgedRule, rulePlaces } from './states.ts';
import { stepFrom } from './step.ts';
import type { Sizes } from './structure.ts';

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
  const last = memory.last;
  const now = (last && stepFrom(input, last)) ?? layOutAll(input, last);
  memory.last = now;
  return now.layout;
}

/** Every stage over everything; what did not change is taken over item by item. */
function layOutAll(input: LayoutInput, last: Remembered | null): Remembered {
  const { design, face, stocks, sizes, held, keepClears } = input;
  const { parts, rules, finishes } = design;
  const byId = new Map(parts.map((part) => [part.id, part]));
  const network = networkOf(input, byId, last);
  const solved = solveAll({ face, stocks, sizes, held }, network, (id) => byId.get(id), last ?? undefined);
  const boxes = new Map<string, Box>(
    parts.map((part) => [part.id, solvedBox(part, { network, solved }, last?.layout.boxes.get(part.id))]),
  );
  const finishIds = finishIdsOf(finishes, last);
  const placement = placeParts({ parts, boxes, face, stocks, finishes: finishIds }, last?.placement);
  const checking = checkPlacings(placement.placings, { face, keepClears }, last?.checking);
  const places = rulePlaces(rules);
  const judged = rules.map((rule) => judgedRule(rule, rules, places, { network, solved }));
  const found = kept(last?.found, allChecks({ judged, placement, checking }));
  const layout = {
    boxes,
    parts: placement.placings.map((placing) => placing.laid),
    rules: judged.map((one) => one.state),
    checks: found === last?.found ? last.layout.checks : orderChecks(found),
  };
  return {
    ...{ face, stocks, sizes, held, keepClears, parts, rules, finishes, finishIds },
    ...{ places: placesOf(parts), rulePlaces: places },
    ...{ network, solved, placement, checking, judged, found, layout },
  };
}

function networkOf(
  { design, face }: LayoutInput,
  byId: ReadonlyMap<string, Design['parts'][number]>,
  last: Remembered | null,
): Remembered['network'] {
  if (last?.face === face && changedAt(last.parts, design.parts, sameNames)) {
    const changed = changedAt(last.rules, design.rules, sameTies);
    if (changed)
      return withRules(
        last.network,
        changed.flatMap((i) => design.rules[i] ?? []),
      );
  }
  return buildNetwork(byId, design.rules, face);
}
