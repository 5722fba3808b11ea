import type { Look } from '../design/look.ts';
import { regionOfRings } from '../geometry/clip.ts';
import { rotate } from '../geometry/point.ts';
import type { Point, Region } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';
import type { SetLine } from './setting.ts';
import type { Track } from './track.ts';

/** A bent ribbon is drawn in steps no longer than this. */
const STEP: Mm = 1;

/**
 * The band behind a line of text, along what the line stands on: the margin beyond its letters on all sides, and beyond
 * that ends that are notched in to where the margin ends.
 */
export function ribbonOf(
  { left, right, top, foot }: SetLine,
  track: Track,
  { margin, notch }: NonNullable<Look['ribbon']>,
): Region {
  if (right <= left) return [];
  const [from, to] = [left - margin - notch, right + margin + notch];
  const [low, high] = [foot - margin, top + margin];
  const place = (along: Mm, over: Mm): Point => {
    const { x, y, turn } = track.at(along, STEP / 2);
    const up = rotate({ x: 0, y: over }, turn);
    return { x: x + up.x, y: y + up.y };
  };
  const steps = track.bent ? Math.ceil((to - from) / STEP) : 1;
  const edge = (over: Mm) =>
    Array.from({ length: steps + 1 }, (_, i) => place(from + ((to - from) * i) / steps, over));
  const middle = (low + high) / 2;
  const notches = notch > 0 ? [place(to - notch, middle), place(from + notch, middle)] : [];
  const [end, start] = notches;
  const ring = [...edge(low), ...(end ? [end] : []), ...edge(high).reverse(), ...(start ? [start] : [])];
  return regionOfRings([ring], 'nonzero');
}
