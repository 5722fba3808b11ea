import type { Box } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import type { Hardware } from '../materials/types.ts';
import type { Fitting, OutlineCorner, PanelShape } from './schema.ts';

/** A quarter turn to the left of a place in its box. */
const turnedCorner = <P extends Pick<OutlineCorner, 'u' | 'v'>>(p: P): P => ({ ...p, u: 1 - p.v, v: p.u });

const turnedShape = (shape: PanelShape): PanelShape =>
  shape.form === 'polygon' ? { ...shape, points: shape.points.map(turnedCorner) } : shape;

/** Whether hardware can be had upright and across: a head looks up, whichever way the rest is turned. */
export const canTurn = ({ shape, width, height }: Hardware): boolean =>
  shape.form !== 'arched' && width !== height;

/** What a fitting is as an entry of the table tells it, as the entry lies or a quarter turn to the left. */
export function hardwareOf(entry: Hardware, isTurned: boolean) {
  const { id, width, height, depth, mass_kg, price, color, ways } = entry;
  const [w, h] = isTurned ? [height, width] : [width, height];
  const holes = isTurned ? entry.holes.map(turnedCorner) : entry.holes;
  const shape = isTurned ? turnedShape(entry.shape) : entry.shape;
  return {
    shape,
    depth,
    mass_kg,
    price,
    color,
    sold: { entry: id, w, h, ways, holes },
  } satisfies Partial<Fitting>;
}

/** The same in the middle of a box. */
export function hardwareIn(entry: Hardware, isTurned: boolean, { x, y, w, h }: Box) {
  const made = hardwareOf(entry, isTurned);
  const { sold } = made;
  return { ...made, box: { x: x + (w - sold.w) / 2, y: y + (h - sold.h) / 2, w: sold.w, h: sold.h } };
}

/** Hardware of the table that is nearest in size to a box, upright or across, in its middle; of two as near the first. */
export function hardwareNear(table: readonly Hardware[], box: Box): ReturnType<typeof hardwareIn> {
  const all = table.flatMap((entry) =>
    (canTurn(entry) ? [false, true] : [false]).map((isTurned) => hardwareIn(entry, isTurned, box)),
  );
  const off = ({ sold }: (typeof all)[number]) => Math.abs(sold.w - box.w) + Math.abs(sold.h - box.h);
  return all.reduce((best, one) => (off(one) < off(best) ? one : best), pick(all, 0));
}
