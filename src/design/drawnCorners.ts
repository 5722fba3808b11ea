import type { DrawnCorner, DrawnSide } from '../geometry/drawn.ts';
import type { Box, Point } from '../geometry/shape.ts';
import type { OutlineCorner } from './schema.ts';

type Share = { readonly u: number; readonly v: number };

const inFrame =
  (frame: Box) =>
  ({ u, v }: Share): Point => ({ x: frame.x + u * frame.w, y: frame.y + v * frame.h });

/** Corners of an outline where the box around its corners is. */
export function cornersIn(points: readonly OutlineCorner[], frame: Box): DrawnCorner[] {
  const at = inFrame(frame);
  return points.map((corner) => ({ at: at(corner), side: sideIn(corner.side, at), cut: corner.cut }));
}

function sideIn(side: OutlineCorner['side'], at: (share: Share) => Point): DrawnSide | undefined {
  if (side?.as !== 'smooth') return side;
  return { as: 'smooth', handles: side.handles && [at(side.handles[0]), at(side.handles[1])] };
}
