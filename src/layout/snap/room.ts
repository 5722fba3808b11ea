import type { Axis } from '../../design/schema.ts';
import { boxArea, grownBox, surrounds } from '../../geometry/box.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { otherAxis, spanOf, spansMeet, withSpan } from '../span.ts';
import type { SnapInput } from './snapping.ts';

/**
 * The free room around a point: within the innermost of the face, its levels, frames and parts that lie around it, as
 * far as the next thing on each side. Of the two that come of looking along one axis first, the larger.
 */
export function roomAround(p: Point, { others, face }: Pick<SnapInput, 'others' | 'face'>): Box {
  const at = grownBox({ ...p, w: 0, h: 0 }, 2 * SAME_LENGTH);
  const around = [
    ...face.levels.map(({ box }) => box),
    ...others.map(({ box, inner }) => (inner && surrounds(inner, at) ? inner : box)),
  ].filter((box) => surrounds(box, at));
  const within = around.reduce((least, box) => (boxArea(box) < boxArea(least) ? box : least), face.box);
  const inWay = others.map(({ box }) => box).filter((box) => !surrounds(box, at));
  const along = (axis: Axis) => grown(grown(at, axis, within, inWay), otherAxis(axis), within, inWay);
  const [wide, tall] = [along('x'), along('y')];
  return boxArea(wide) < boxArea(tall) ? tall : wide;
}

/** A box as long along an axis as the room goes on beside it. */
function grown(box: Box, axis: Axis, within: Box, inWay: readonly Box[]): Box {
  const own = spanOf(box, axis);
  const across = spanOf(box, otherAxis(axis));
  let { low, high } = spanOf(within, axis);
  for (const other of inWay) {
    if (!spansMeet(across, spanOf(other, otherAxis(axis)))) continue;
    const span = spanOf(other, axis);
    if (span.high <= own.low + SAME_LENGTH) low = Math.max(low, span.high);
    else if (span.low >= own.high - SAME_LENGTH) high = Math.min(high, span.low);
  }
  return withSpan(box, axis, low, high - low);
}
