import type { Mm } from '../../measure/units.ts';
import { middle, pointOn, type Span } from '../span.ts';
import type { Dimension, Guide, Offer, SnapAxis } from './snapping.ts';

/** An offer of what is near, of the place alone where nothing is said that is drawn or held. */
export const offerOf = (
  { axis }: SnapAxis,
  own: Omit<Offer, 'axis' | 'far' | 'guides' | 'dimensions'> & Partial<Offer>,
): Offer => ({ axis, far: 0, guides: [], dimensions: [], ...own });

/** A line at a place along the axis that runs past both stretches. */
export function guideAt(on: SnapAxis, at: Mm, across: Span): Guide {
  return {
    from: pointOn(on.axis, at, Math.min(across.low, on.across.low)),
    to: pointOn(on.axis, at, Math.max(across.high, on.across.high)),
  };
}

/** A dimension from one place along the axis to another, through the middle of the moving parts. */
export function dimensionAlong(on: SnapAxis, from: Mm, to: Mm): Dimension {
  const across = middle(on.across);
  return {
    from: pointOn(on.axis, from, across),
    to: pointOn(on.axis, to, across),
    length: Math.abs(to - from),
  };
}
