import type { Mm } from '../measure/units.ts';
import type { Box, Point } from './shape.ts';

/** The box moved out by `by` on every side; in, where that is negative. */
export const grownBox = ({ x, y, w, h }: Box, by: Mm): Box => ({
  x: x - by,
  y: y - by,
  w: w + 2 * by,
  h: h + 2 * by,
});

/** Smallest box around two. */
export function boxAroundBoth(a: Box, b: Box): Box {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

/** Smallest box around all; null for none. */
export function boxAround(boxes: Iterable<Box>): Box | null {
  let around: Box | null = null;
  for (const box of boxes) around = around ? boxAroundBoth(around, box) : box;
  return around;
}

/** Whether a box lies in another, or reaches out of it by no more than `slack`. */
export const surrounds = (outer: Box, inner: Box, slack: Mm = 0): boolean =>
  inner.x >= outer.x - slack &&
  inner.y >= outer.y - slack &&
  inner.x + inner.w <= outer.x + outer.w + slack &&
  inner.y + inner.h <= outer.y + outer.h + slack;

/** Whether a point lies in a box, or beside it by no more than `slack`. */
export const holds = ({ x, y, w, h }: Box, p: Point, slack: Mm = 0): boolean =>
  p.x >= x - slack && p.x <= x + w + slack && p.y >= y - slack && p.y <= y + h + slack;

/** Whether a segment lies all to one side of a box: it neither crosses nor touches it. */
export const isBeyond = ({ x, y, w, h }: Box, p: Point, q: Point): boolean =>
  (p.x < x && q.x < x) ||
  (p.x > x + w && q.x > x + w) ||
  (p.y < y && q.y < y) ||
  (p.y > y + h && q.y > y + h);

export const boxArea = ({ w, h }: Box): number => w * h;

/** How far two boxes reach over each other along both axes; less than 0 where they lie apart. */
export const sharedSides = (a: Box, b: Box): { readonly across: Mm; readonly up: Mm } => ({
  across: Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x),
  up: Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y),
});

/** How far two boxes lie apart; 0 where they touch or share an area. */
export function boxGap(a: Box, b: Box): Mm {
  const { across, up } = sharedSides(a, b);
  return Math.hypot(Math.max(-across, 0), Math.max(-up, 0));
}

/** The area that two boxes share. */
export function sharedArea(a: Box, b: Box): number {
  const { across, up } = sharedSides(a, b);
  return across > 0 && up > 0 ? across * up : 0;
}
