import type { FreeEnd } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import { type Mm, radians } from '../measure/units.ts';
import type { Bar, End, Line } from './bar.ts';
import { returnAngle } from './end/return.ts';
import { type Cut, cutAlong } from './trim.ts';

/**
 * The cuts of an end that meets nothing: as the person set them, or, for a brace along a diagonal of its
 * box, the two sides of the box that meet in its corner.
 */
export function naturalCuts(bar: Bar, end: End): Cut[] {
  const { laid } = bar;
  if (laid.kind === 'strip' && isBrace(bar)) {
    const cuts = boxCuts(bar, end, laid.box);
    if (cuts.length > 0) return cuts;
  }
  return [freeCut(bar, end, laid.spec.ends[end])];
}

/** A brace is held within its box even where a joint cuts it. */
export const isBrace = (bar: Bar): boolean =>
  bar.laid.kind === 'strip' && (bar.laid.spec.lie === 'rising' || bar.laid.spec.lie === 'falling');

function freeCut(bar: Bar, end: End, free: FreeEnd): Cut {
  const angle = free.cut === 'miter' ? free.angle : free.cut === 'return' ? returnAngle(bar.stock) : 0;
  const slope = Math.tan(radians(end === 'end' ? angle : -angle));
  // The laid length is long point to long point: the cut takes wood away on the short side only.
  const back: Mm = (Math.abs(slope) * bar.width) / 2;
  const kind = free.cut === 'miter' && angle === 0 ? 'square' : free.cut;
  return { at: end === 'end' ? bar.length - back : back, slope, kind, with: null, corner: null };
}

function boxCuts(bar: Bar, end: End, box: Box): Cut[] {
  const forward = end === 'end';
  const right = bar.along.x > 0 === forward;
  const top = bar.along.y > 0 === forward;
  const upright: Line = { at: { x: right ? box.x + box.w : box.x, y: box.y }, along: { x: 0, y: 1 } };
  const level: Line = { at: { x: box.x, y: top ? box.y + box.h : box.y }, along: { x: 1, y: 0 } };
  const rest = { kind: 'miter', with: null, corner: null } as const;
  return [cutAlong(bar, upright, rest), cutAlong(bar, level, rest)].filter((cut) => cut !== null);
}
