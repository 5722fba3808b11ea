import type { DrawItem } from '../drawing/drawing.ts';
import { moved, shape } from '../drawing/items.ts';
import { INK } from '../drawing/style.ts';
import { grownBox } from '../geometry/box.ts';
import { pathOfBox } from '../geometry/path.ts';
import type { Box } from '../geometry/shape.ts';
import { inches, type Mm } from '../measure/units.ts';
import { drawPlate, drawRuler, type Plate, RULER_HEIGHT, rulerLength, squareSide } from './furniture.ts';
import type { Occupancy } from './occupancy.ts';
import { freePlace } from './place.ts';

/** The square and the ruler stay this far inside the page, and from each other. */
export const CLEAR: Mm = 3;
/** White kept around figures where lines are cleared away behind them. */
const AROUND: Mm = 0.5;

/** A place and whether the thing stands upright in it. */
interface Placed {
  readonly box: Box;
  readonly covered: number;
  readonly turned: boolean;
}

/** Best place for the size, lying or, where allowed, standing: in the first room that has as good a one as any. */
function bestPlace(rooms: readonly Box[], w: Mm, h: Mm, taken: Occupancy): Placed | null {
  const sizes =
    w === h
      ? [{ w, h, turned: false }]
      : [
          { w, h, turned: false },
          { w: h, h: w, turned: true },
        ];
  let best: Placed | null = null;
  for (const room of rooms) {
    for (const { turned, ...size } of sizes) {
      if (best?.covered === 0) return best;
      const place = freePlace(room, size, taken);
      if (place && (!best || place.covered < best.covered)) best = { ...place, turned };
    }
  }
  return best;
}

/**
 * White ground behind the square or ruler, so that no line runs through its words. Only lines for laying the
 * pattern on the work go under it: they are straight and go on beside it. What is cut or followed stays.
 */
function ground(box: Box, taken: Occupancy): DrawItem[] {
  const cleared = grownBox(box, AROUND);
  return taken.hasLightOnly(cleared) ? [shape(pathOfBox(cleared), { fill: INK.paper })] : [];
}

/** Where the square and the ruler of a page stand. */
interface Stands {
  readonly square: Placed | null;
  readonly ruler: Placed | null;
  readonly length: ReturnType<typeof rulerLength>;
}

/**
 * Where they cover least. The square names the page, so it stands in what is left after trimming, if it can; the
 * ruler is read once, before that, and stands on paper that shows nothing, if it can.
 */
function standsOf(side: Mm, own: readonly Box[], beyond: readonly Box[], free: Occupancy): Stands {
  const square = bestPlace(own, side, side, free);
  const length = rulerLength(Math.max(...own.flatMap((room) => [room.w, room.h])) - 1);
  const long = Math.max(length.mm, inches(length.in)) + 1;
  const left = square ? free.blocking(grownBox(square.box, CLEAR)) : free;
  return { square, length, ruler: bestPlace([...beyond, ...own], long, RULER_HEIGHT, left) };
}

/**
 * The square and the ruler in their places, in the pattern's coordinates.
 *
 * @param own inside the trim lines first, then the whole page
 * @param beyond the page's paper beside the pattern
 * @param free what is taken of the page before they stand there
 */
export function measures(
  plate: Plate,
  own: readonly Box[],
  beyond: readonly Box[],
  free: Occupancy,
): DrawItem[] {
  const { square, ruler, length } = standsOf(squareSide(plate.unit), own, beyond, free);
  const items: DrawItem[] = [];
  if (square) {
    items.push(...ground(square.box, free), moved(square.box, drawPlate(plate)));
  }
  if (ruler) {
    const { box, turned } = ruler;
    const move = turned ? { x: box.x + box.w, y: box.y } : { x: box.x, y: box.y };
    const drawn = drawRuler(length, plate.terms);
    items.push(...ground(box, free), { kind: 'group', turn: turned ? 90 : 0, move, items: drawn });
  }
  return items;
}
