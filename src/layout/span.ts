import type { Axis } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';

/** The stretch that something takes up along one axis. Everything that is true of both axes is written over it once. */
export interface Span {
  readonly low: Mm;
  readonly high: Mm;
}

export const AXES: readonly Axis[] = ['x', 'y'];

export const otherAxis = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');

export const startOf = (box: Box, axis: Axis): Mm => (axis === 'x' ? box.x : box.y);

export const sizeOf = (box: Box, axis: Axis): Mm => (axis === 'x' ? box.w : box.h);

export function spanOf(box: Box, axis: Axis): Span {
  const low = startOf(box, axis);
  return { low, high: low + sizeOf(box, axis) };
}

/** Whether two stretches have more than a touch in common. */
export const spansMeet = (a: Span, b: Span): boolean =>
  Math.min(a.high, b.high) - Math.max(a.low, b.low) > SAME_LENGTH;

export const middle = (span: Span): Mm => (span.low + span.high) / 2;

/** The box with its start and size along one axis replaced. */
export function withSpan(box: Box, axis: Axis, start: Mm, size: Mm): Box {
  return axis === 'x' ? { ...box, x: start, w: size } : { ...box, y: start, h: size };
}

/** A point by its places along and across an axis. */
export const pointOn = (axis: Axis, along: Mm, across: Mm) =>
  axis === 'x' ? { x: along, y: across } : { x: across, y: along };
