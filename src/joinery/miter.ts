import { type Deg, type Mm, radians } from '../measure/units.ts';

/**
 * Flat miters, as a miter saw shows them: 0 is a square cut. Plane geometry throughout; the saw angle of a
 * corner is half of what the corner lacks to a straight line.
 */

/** Saw angle of a corner of equal widths with interior angle `interior`: (180 - interior) / 2. */
export const cornerMiter = (interior: Deg): Deg => (180 - interior) / 2;

/** What an end cut at `miter` takes from the long point to the short point, on a piece of this width. */
export const endRun = (width: Mm, miter: Deg): Mm => width * Math.tan(radians(Math.abs(miter)));
