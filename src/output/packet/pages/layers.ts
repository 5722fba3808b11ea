import { isPaint } from '../../../design/made.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { shape, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { wrapped } from '../../../drawing/text.ts';
import { sharedArea } from '../../../geometry/box.ts';
import { intersect } from '../../../geometry/clip.ts';
import { meetingPairs } from '../../../geometry/meeting.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { areaOf, boxOf } from '../../../geometry/region.ts';
import type { Box } from '../../../geometry/shape.ts';
import { SAME_LENGTH } from '../../../geometry/tolerance.ts';
import type { Solid } from '../../../joinery/piece.ts';
import { pick } from '../../../list/at.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Joined } from '../../../plan/types.ts';
import { hiddenEdges, outlinedFace, solidsInOrder } from '../faceView.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { nameOn } from '../nameOn.ts';
import { type Drawn, type Figure, standOf, together } from '../together.ts';
import { viewOf } from '../view.ts';

/** Ground that two parts share; less is rounding along an edge. */
const TOUCHING_MM2 = 1;
/** From one line of a note to the next. */
const LEAD: Mm = 4;

/** Solids by what they lie on: the first lie on the bed, each other one on some of the layer before it. */
export function layersOf(solids: readonly Solid[]): Solid[][] {
  const boxes = solids.map(({ region }) => boxOf(region));
  const layer = solids.map(() => 0);
  const isUnder = (low: Solid, high: Solid, [a, b]: readonly [Box, Box]): boolean =>
    low.z1 <= high.z0 + SAME_LENGTH &&
    sharedArea(a, b) > TOUCHING_MM2 &&
    areaOf(intersect(low.region, high.region)) > TOUCHING_MM2;
  const pairs = meetingPairs(boxes).flatMap(([i, k]) => {
    const [a, b] = [boxes[i], boxes[k]];
    if (!a || !b) return [];
    if (isUnder(pick(solids, i), pick(solids, k), [a, b])) return [[i, k] as const];
    return isUnder(pick(solids, k), pick(solids, i), [b, a]) ? [[k, i] as const] : [];
  });
  // What is lower is known before what lies on it.
  pairs.sort(([, a], [, b]) => pick(solids, a).z1 - pick(solids, b).z1);
  for (const [low, high] of pairs) layer[high] = Math.max(pick(layer, high), pick(layer, low) + 1);
  return Array.from({ length: Math.max(-1, ...layer) + 1 }, (_, i) =>
    solids.filter((_, k) => layer[k] === i),
  );
}

function figure(
  packet: Packet<Joined>,
  layers: readonly (readonly Solid[])[],
  i: number,
  [room, least]: Parameters<Drawn>,
): Figure {
  const { plan, say, terms, unit } = packet;
  const own = pick(layers, i);
  const there = new Set(layers.slice(0, i + 1).flat());
  const small = { size: TEXT.small };
  const notes = wrapped(terms.layer(i + 1, layers.length), small, room.w);
  const stand = standOf({ top: notes.length * LEAD + 3, bottom: 2 }, least);
  const view = viewOf(plan.face.box, room, unit, { left: 0, right: 0, ...stand });
  const draw = (): DrawItem[] => {
    const taken: Box[] = [];
    const names = own.flatMap(({ part, region }) => {
      const placed = nameOn(view.region(region), say.name(part), taken);
      if (placed) taken.push(placed.box);
      return placed ? [placed.item] : [];
    });
    const bold = { stroke: INK.line, width: WEIGHT.bold };
    return [
      ...notes.map((row, k) => text({ x: room.x, y: room.y + room.h - 3 - k * LEAD }, row, small)),
      ...outlinedFace(plan, view, (solid) => there.has(solid)),
      ...own.map(({ region }) => shape(pathOfRegion(view.region(region)), bold)),
      ...names,
    ];
  };
  return { scale: view.scale, stand, draw };
}

/** The face layer by layer, from the bed up: every layer of which edges run under what lies on it, as it is before that. */
export function layers(packet: Packet<Joined>): Leaf[] {
  const { plan, terms } = packet;
  const solids = solidsInOrder(plan).filter((solid) => !isPaint(solid));
  const hidden = new Set(hiddenEdges(plan).flatMap(({ solid, lines }) => (lines.length > 0 ? [solid] : [])));
  const all = layersOf(solids);
  const figures = all.flatMap((own, i) =>
    own.some((solid) => hidden.has(solid))
      ? [(...where: Parameters<Drawn>) => figure(packet, all, i, where)]
      : [],
  );
  return together(packet, terms.titles.layers, figures);
}
