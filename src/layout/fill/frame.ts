import type { Fill } from '../../design/schema.ts';
import { rotate } from '../../geometry/point.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import { SAME_ANGLE } from '../../geometry/tolerance.ts';
import type { Deg } from '../../measure/units.ts';

/** The way pieces lie: `x` along them, `y` across, from the lower left corner of the shape as it is seen so. */
export interface Frame {
  readonly room: Pick<Box, 'w' | 'h'>;
  toFace(p: Point): Point;
}

/**
 * From -90 up to 90: across the pieces is upward, and to the right where they stand upright, so that the low edge
 * is the lower or the left one.
 */
export function turnOf({ angle }: Pick<Fill, 'angle'>): Deg {
  const turn = (((angle + 90) % 180) + 180) % 180;
  return Math.min(turn, 180 - turn) < SAME_ANGLE ? -90 : turn - 90;
}

/** The frame of a fill's pieces over what it fills. */
export function frameOf(fill: Pick<Fill, 'angle'>, region: Region): Frame {
  const turn = turnOf(fill);
  const { x, y, w, h } = boxOfPoints(region.flatMap(({ outer }) => outer.map((p) => rotate(p, -turn))));
  return {
    room: { w, h },
    toFace: (p) => rotate({ x: x + p.x, y: y + p.y }, turn),
  };
}

/** The other edge, for what is laid out from one. */
export const otherStart = (start: Fill['start']): Fill['start'] =>
  start === 'low' ? 'high' : start === 'high' ? 'low' : start;
