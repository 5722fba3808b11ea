import type { Part } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import { boxIn } from './boxIn.ts';
import type { Layout } from './laid.ts';
import type { LayoutInput } from './layout.ts';
import { structureOf } from './structure.ts';

/** The edges of a part that rules and snapping mean. */
export interface Bounds {
  readonly id: string;
  /** Its visible outside: past its box where a frame's stock lies outside of its path. */
  readonly box: Box;
  /** The inside of a frame. */
  readonly inner?: Box;
}

/** Bounds of every part of the design, arrays as a whole, in the design's order. */
export const boundsOf = (input: LayoutInput, layout: Layout): Bounds[] =>
  input.design.parts.map((part) => boundsOfPart(input, layout, part));

export function boundsOfPart({ stocks, sizes }: LayoutInput, layout: Layout, part: Part): Bounds {
  const { id } = part;
  const box = boxIn(layout.boxes, part);
  const across = structureOf(part, 'x', stocks, sizes);
  const up = structureOf(part, 'y', stocks, sizes);
  const outside = grown(box, across.outset, up.outset);
  if (across.inset === 0 && across.outset === 0) return { id, box: outside };
  const inner = grown(box, -across.inset, -up.inset);
  return inner.w > 0 && inner.h > 0 ? { id, box: outside, inner } : { id, box: outside };
}

const grown = ({ x, y, w, h }: Box, dx: number, dy: number): Box =>
  dx === 0 && dy === 0 ? { x, y, w, h } : { x: x - dx, y: y - dy, w: w + 2 * dx, h: h + 2 * dy };
