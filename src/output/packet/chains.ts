import { isBoards } from '../../design/made.ts';
import type { DrawItem } from '../../drawing/drawing.ts';
import { polyline, text } from '../../drawing/items.ts';
import { spreadOut } from '../../drawing/spread.ts';
import { INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { boxesMeet, boxOf } from '../../geometry/region.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { designPart } from '../../layout/reference.ts';
import { pick } from '../../list/at.ts';
import { grouped, groupOf } from '../../list/grouped.ts';
import type { Mm } from '../../measure/units.ts';
import type { Packet } from './leaf.ts';
import type { PageView } from './view.ts';

export type Axis = 'x' | 'y';

/** Where a chain stands: below and to the left, or on the opposite side. */
export type ChainSide = 'near' | 'far';

/** Size of a figure of a chain, and from one to the next. */
const LABEL: Mm = TEXT.note;
const PITCH: Mm = 3.1;
/** How far the figures may stand out beyond what they measure, at either end. */
const BEYOND: Mm = 3;

const SIDE = { x: 'w', y: 'h' } as const;

/** What tells two places of edges apart: by less than this no tape does. */
const placeOf = (at: Mm): number => Math.round(at * 100);

/** Edges of what lies within the area, each place once, from the datum of the face. */
function edgesIn({ plan }: Packet, area: Box, axis: Axis): Mm[] {
  // As they are: rounded, a half step of the tape would be read another way than on the other sheets.
  const found = new Map<number, Mm>();
  const [low, high] = [area[axis], area[axis] + area[SIDE[axis]]];
  const add = (at: Mm) => {
    if (at >= low - SAME_PLACE && at <= high + SAME_PLACE) found.set(placeOf(at), at);
  };
  // Of a fill only what is marked: every edge of a herringbone is a thicket.
  const fills = new Set(plan.design.parts.filter(isBoards).map((part) => part.id));
  const marks = grouped(
    plan.marks.marks.filter((mark) => mark.axis === axis && fills.has(designPart(mark.part))),
    ({ part }) => part,
  );
  for (const solid of plan.joinery.solids) {
    const box = boxOf(solid.region);
    if (!box || !boxesMeet(box, area)) continue;
    const own = isBoards(solid)
      ? groupOf(marks, solid.part).map(({ at }) => at)
      : [box[axis], box[axis] + box[SIDE[axis]]];
    own.forEach(add);
  }
  return [...found.values()].sort((a, b) => a - b);
}

/**
 * The edges of a stretch of the face by the side that they are told on: those of its lower half below it, what else is
 * in its upper half above it, and so on its left and right.
 */
export function edgesBySide(packet: Packet, area: Box, axis: Axis): Readonly<Record<ChainSide, Mm[]>> {
  const { x, y, w, h } = area;
  const halves =
    axis === 'x'
      ? [
          { x, y, w, h: h / 2 },
          { x, y: y + h / 2, w, h: h / 2 },
        ]
      : [
          { x, y, w: w / 2, h },
          { x: x + w / 2, y, w: w / 2, h },
        ];
  const [near = [], far = []] = halves.map((half) => edgesIn(packet, half, axis));
  const told = new Set(near.map(placeOf));
  return { near, far: far.filter((at) => !told.has(placeOf(at))) };
}

/** How many figures stand beside a length on paper. */
export const chainRoom = (length: Mm): number => Math.floor((length + 2 * BEYOND) / PITCH) + 1;

/** The chain of one side: the distance of every edge from the datum, beside a short line to its place. */
export function chain(
  packet: Packet,
  view: PageView,
  all: readonly Mm[],
  axis: Axis,
  side: ChainSide,
): DrawItem[] {
  const { box } = view;
  const [low, high] = [box[axis], box[axis] + box[SIDE[axis]]];
  const places = all.map((at) => view.to({ x: at, y: at })[axis]);
  const rows = spreadOut(places, PITCH, low - BEYOND, high + BEYOND);
  const look = { stroke: INK.soft, width: WEIGHT.hair };
  const across = axis === 'x' ? 'y' : 'x';
  const [foot, out] = side === 'near' ? [box[across], -1] : [box[across] + box[SIDE[across]], 1];
  const anchor = side === 'near' ? 'end' : 'start';
  return all.flatMap((at, i): DrawItem[] => {
    const [place, row] = [pick(places, i), pick(rows, i)];
    const words = packet.told(at);
    const steps = [
      [place, 1],
      [place, 3],
      [row, 6],
      [row, 7],
    ] as const;
    const on = (along: Mm, off: Mm) =>
      axis === 'x' ? { x: along, y: foot + out * off } : { x: foot + out * off, y: along };
    const figure =
      axis === 'x'
        ? text(on(row + LABEL * 0.36, 7.8), words, { size: LABEL, angle: 90, anchor })
        : text(on(row - LABEL * 0.36, 7.8), words, { size: LABEL, anchor });
    return [
      polyline(
        steps.map(([along, off]) => on(along, off)),
        false,
        look,
      ),
      figure,
    ];
  });
}
