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
