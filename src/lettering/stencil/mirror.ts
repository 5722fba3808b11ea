import { distance } from '../../geometry/point.ts';
import { nearestOnSegment } from '../../geometry/segment.ts';
import type { Box, Point, Ring } from '../../geometry/shape.ts';
import { cyclic } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';

/** A line that a shape is the same on both sides of: upright at some x, or level at some y. */
export interface Mirror {
  readonly axis: 'x' | 'y';
  readonly at: Mm;
}

/** A border whose image is no farther off than this share of its size is even to the eye. */
const EVEN = 0.06;

/** The lines through the middle of a border's box about which it is its own image: upright before level. */
export function mirrorsOf(ring: Ring, { x, y, w, h }: Box): Mirror[] {
  const both: Mirror[] = [
    { axis: 'x', at: x + w / 2 },
    { axis: 'y', at: y + h / 2 },
  ];
  const most = EVEN * Math.sqrt(w * h);
  return both.filter((mirror) =>
    ring.every((p) => {
      const image = imageOf(p, mirror);
      return distance(image, nearestOnRing(image, ring)) <= most;
    }),
  );
}

/** The place of a border that is nearest to `p`. */
export function nearestOnRing(p: Point, ring: Ring): Point {
  let nearest = p;
  let least = Infinity;
  ring.forEach((from, i) => {
    const place = nearestOnSegment(p, from, cyclic(ring, i + 1));
    if (distance(p, place) >= least) return;
    nearest = place;
    least = distance(p, place);
  });
  return nearest;
}

export const imageOf = (p: Point, { axis, at }: Mirror): Point =>
  axis === 'x' ? { x: 2 * at - p.x, y: p.y } : { x: p.x, y: 2 * at - p.y };

/** A direction in the mirror. */
export const turnedBy = ({ x, y }: Point, { axis }: Mirror): Point =>
  axis === 'x' ? { x: -x, y } : { x, y: -y };
