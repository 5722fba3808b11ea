import { orderChecks } from '../check/check.ts';
import type { Box } from '../geometry/shape.ts';
import { under } from '../list/at.ts';
import { boxesToEnds, solvedBox } from './boxes.ts';
import { kept, placesOf } from './changes.ts';
import { checkPlacings } from './check/checks.ts';
import { toldOnce } from './fill/toldOnce.ts';
import { allChecks, finishIdsOf } from './gather.ts';
import type { LayoutInput } from './input.ts';
import type { Layout } from './laid.ts';
import { placeParts } from './place/place.ts';
import type { Remembered } from './remembered.ts';
import { buildNetwork } from './solve/network.ts';
import { solveAll } from './solve/solveAll.ts';
import { judgedRule, rulePlaces } from './states.ts';
import { stepFrom } from './step.ts';

export type { LayoutInput };

/**
 * Where everything is: solves the rules on each axis, lays the parts on their levels and on each other,
 * and checks them.
 *
 * The boxes of the design are where parts would like to stay. Rules that hold together hold exactly;
 * what they leave free stays where it was. A rule that contradicts rules before it in the design's list
 * is left out and named together with those.
 */
export const layOut = (input: LayoutInput): Layout => laidFrom(input, null).layout;

/** The same with what the next layout is made from; it equals the layout from nothing, only that it comes sooner. */
export const laidFrom = (input: LayoutInput, last: Remembered | null): Remembered =>
  (last && stepFrom(input, last)) ?? layOutAll(input, last);

/** Every stage over everything; what did not change is taken over item by item. */
function layOutAll(input: LayoutInput, last: Remembered | null): Remembered {
  const { design, face, stocks, sizes, held, keepClears } = input;
  const { parts, rules, finishes } = design;
  const byId = new Map(parts.map((part) => [part.id, part]));
  const network = buildNetwork(byId, rules, face);
  const solved = solveAll({ face, stocks, sizes, held }, network, (id) => under(byId, id), last ?? undefined);
  const boxes = new Map<string, Box>(
    parts.map((part) => [part.id, solvedBox(part, { network, solved }, last?.boxes.get(part.id))]),
  );
  const finishIds = finishIdsOf(finishes, last);
  const placement = placeParts({ parts, boxes, face, stocks, finishes: finishIds }, last?.placement);
  const checking = checkPlacings(placement.placings, { face, keepClears }, last?.checking);
  const places = rulePlaces(rules);
  const judged = rules.map((rule) => judgedRule(rule, rules, places, { network, solved }));
  const found = kept(last?.found, allChecks({ judged, placement, checking }));
  const layout = {
    boxes: boxesToEnds(boxes, placement, last?.layout.boxes),
    parts: kept(
      last?.layout.parts,
      placement.placings.map((placing) => placing.laid),
    ),
    rules: judged.map((one) => one.state),
    checks: found === last?.found ? last.layout.checks : orderChecks(toldOnce(found, parts)),
  };
  return {
    ...{ face, stocks, sizes, held, keepClears, parts, rules, finishes, finishIds },
    ...{ places: placesOf(parts), rulePlaces: places },
    ...{ network, solved, boxes, placement, checking, judged, found, layout },
  };
}
