import type { Lettering } from '../../design/schema.ts';
import { ellipseRing } from '../../geometry/figures.ts';
import { distance } from '../../geometry/point.ts';
import { containsBox, regionOfRing } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';

/** Holes larger than this serve no pin or pencil. */
const MOST_RADIUS: Mm = 3;

/**
 * The sheet a stencil is cut from: the box of all its letters with the frame left around. The frame is at
 * least a bridge wide: narrower, letters would cut the sheet's edge open.
 */
export function sheetAround(letters: Box, options: Lettering['stencil']): Box {
  const frame = frameOf(options);
  return {
    x: letters.x - frame,
    y: letters.y - frame,
    w: letters.w + 2 * frame,
    h: letters.h + 2 * frame,
  };
}

const frameOf = (options: Lettering['stencil']): Mm => Math.max(options.frame, options.bridgeWidth);

/** How far apart two holes lie at least, in their radius: closer ones would not hold the sheet from turning. */
const APART = 12;

/**
 * Registration holes, one for each corner, in the same place on the stencil of every color: in the middle of the
 * frame's width, with at least a quarter of it left on every side. Where the corner is off the board its hole slides
 * along the frame to the nearest place that lies on the board with wood around it; where there is none it stays in the
 * corner (`holesOff` tells), and the board needs a tab there.
 */
export function registrationHoles(sheet: Box, options: Lettering['stencil'], board: Region): Region {
  const frame = frameOf(options);
  const radius = Math.min(MOST_RADIUS, frame / 4);
  const inner = { x: sheet.x + frame / 2, y: sheet.y + frame / 2, w: sheet.w - frame, h: sheet.h - frame };
  const found: Point[] = [];
  for (const up of [0, 1]) {
    for (const right of [0, 1]) {
      const places = placesFrom(inner, up, right, radius);
      const apart = (p: Point) => found.every((q) => distance(p, q) >= APART * radius);
      found.push(places.find((p) => isOn(board, holeAt(p, 2 * radius)) && apart(p)) ?? pick(places, 0));
    }
  }
  return found.flatMap((p) => regionOfRing(ellipseRing(holeAt(p, radius))));
}

/** Places along the middle of the frame, from a corner on toward the middles of both sides that meet there. */
function placesFrom({ x, y, w, h }: Box, up: number, right: number, step: Mm): Point[] {
  const corner = { x: x + right * w, y: y + up * h };
  const count = Math.floor(Math.max(w, h) / 2 / step);
  return [
    corner,
    ...Array.from({ length: count }, (_, i) => (i + 1) * step).flatMap((off) => [
      ...(off <= w / 2 ? [{ x: corner.x + (right ? -off : off), y: corner.y }] : []),
      ...(off <= h / 2 ? [{ x: corner.x, y: corner.y + (up ? -off : off) }] : []),
    ]),
  ];
}

const holeAt = ({ x, y }: Point, radius: Mm): Box => ({
  x: x - radius,
  y: y - radius,
  w: 2 * radius,
  h: 2 * radius,
});

const isOn = (board: Region, hole: Box): boolean => containsBox(board, hole);

/** How many of the holes do not lie on the board with all of their edge. */
export const holesOff = (holes: Region, board: Region): number =>
  holes.filter(({ outer }) => !isOn(board, boxOfPoints(outer))).length;
