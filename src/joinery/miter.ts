import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';

/**
 * Flat miters, as a miter saw shows them: 0 is a square cut. Plane geometry throughout; the saw angle of a
 * corner is half of what the corner lacks to a straight line.
 */

/** Saw angle of a corner of equal widths with interior angle `interior`: (180 - interior) / 2. */
export const cornerMiter = (interior: Deg): Deg => (180 - interior) / 2;

/**
 * Saw angles of a corner between pieces of widths `a` and `b`, in that order. The joint runs from the inner
 * corner to the outer corner; with the inner corner at the origin and the piece of width `a` along x, the
 * outer corner lies `a` off its inner edge and (a cos t + b) / sin t back along it, which gives
 * tan(miter) = (b + a cos t) / (a sin t). At 90 degrees that is atan(b / a) on the piece of width `a`.
 */
export function unequalMiters(a: Mm, b: Mm, interior: Deg): readonly [Deg, Deg] {
  const t = radians(interior);
  const one = (own: Mm, other: Mm): Deg => degrees(Math.atan2(other + own * Math.cos(t), own * Math.sin(t)));
  return [one(a, b), one(b, a)];
}

/** What an end cut at `miter` takes from the long point to the short point, on a piece of this width. */
export const endRun = (width: Mm, miter: Deg): Mm => width * Math.tan(radians(Math.abs(miter)));
