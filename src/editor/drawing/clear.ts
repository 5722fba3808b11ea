import type { Face } from '../../bed/face.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { toScreen, type View } from '../state/store.ts';
import { type Dimension, dimensionOnScreen, OVERALL, STAND_OFF } from './dimensions.ts';
import { GRIP, type Handle } from './handles.ts';

/** Half of a plate, and of a figure of the face, as the longest ones make them; all here is in pixels. */
const PLATE = { x: 32, y: 12 } as const;
const FIGURE = { x: 26, y: 10 } as const;
/** What stays free between a plate and the dimensions of the face. */
const APART = 3;
/** What a plate may use of the room at the left of the face. */
const LEFT = 36;

/**
 * Dimensions of a part, clear of those of the face: no plate lies on an overall line or on its figure. A width goes
 * below the overall width; a height goes to the other side of its part, else within it, clear of the handles there.
 * Where that is not enough, and where a rule measures, the line stays and its plate moves aside.
 */
export function clearOfOverall(
  dimensions: readonly Dimension[],
  box: Box,
  face: Face,
  view: View,
  handles: readonly Handle[],
): Dimension[] {
  const corner = toScreen(view, { x: face.width, y: 0 });
  const center = toScreen(view, { x: face.width / 2, y: face.height / 2 });
  const line = { x: corner.x + OVERALL, y: corner.y + OVERALL };
  const middleOf = (d: Dimension) => dimensionOnScreen(d, (p) => toScreen(view, p));
  /** How far a plate has to move to the left and up. */
  const needed = ({ x, y }: Point): Point => {
    const reach = (axis: 'x' | 'y', other: 'x' | 'y', at: Point) => {
      const figured = Math.abs(at[other] - center[other]) < PLATE[other] + FIGURE[other] + APART;
      const least = PLATE[axis] + APART + (figured ? FIGURE[axis] : 0);
      return Math.abs(at[axis] - line[axis]) < least ? line[axis] - least - at[axis] : 0;
    };
    return { x: reach('x', 'y', { x, y }), y: reach('y', 'x', { x, y }) };
  };
  const isClear = (d: Dimension) => {
    const { x, y } = needed(middleOf(d).middle);
    return x === 0 && y === 0;
  };
  const isOffHandles = (d: Dimension) => {
    const { from, to } = middleOf(d);
    const [low, high] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
    return (
      d.axis === 'x' ||
      !handles.some(({ px }) => Math.abs(px.x - from.x) < GRIP / 2 && low < px.y && px.y < high)
    );
  };
  const waysFor = (d: Dimension): Dimension[] => {
    if (d.role !== 'size') return [];
    if (d.axis === 'x') return [{ ...d, off: line.y + 2 * PLATE.y - middleOf(d).foot[0].y }];
    // An upright strip is turned by a handle at its left.
    const off = -STAND_OFF.y - PLATE.x;
    const within = { ...d, off };
    return box.x * view.scale + off - PLATE.x > -LEFT ? [{ ...within, cross: box.x }, within] : [within];
  };
  return dimensions.map((d) => {
    if (isClear(d)) return d;
    const other = waysFor(d).find((way) => isClear(way) && isOffHandles(way));
    return other ?? { ...d, aside: needed(middleOf(d).middle) };
  });
}
