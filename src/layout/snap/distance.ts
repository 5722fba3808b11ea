import type { Design } from '../../design/schema.ts';
import { DUST } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { MM_PER_INCH } from '../../measure/units.ts';
import { ownEdges, wallsOf } from './around.ts';
import { dimensionAlong, offerOf } from './drawing.ts';
import type { Offer, SnapAxis } from './snapping.ts';

const INCH_STEPS = [1 / 64, 1 / 32, 1 / 16, 1 / 8].map((step) => step * MM_PER_INCH);
const METRIC_STEPS = [1, 5];

/**
 * The step of the ruler that a hand marks by: an eighth of an inch or five millimeters; zoomed in so far that this
 * would be a jump, the coarsest step that half of is within reach. Never finer than the measures that are shown.
 */
export function rulerStep(style: Design['measure'], reach: Mm): Mm {
  const inches = style.unit === 'in' || style.unit === 'ft-in';
  const finest = inches ? MM_PER_INCH / (style.fraction === 'decimal' ? 64 : Number(style.fraction)) : 1;
  const steps = (inches ? INCH_STEPS : METRIC_STEPS).filter((step) => step >= finest * (1 - DUST));
  return [...steps].reverse().find((step) => step <= 2 * reach) ?? finest;
}

/** The nearest whole number of steps. */
export const rounded = (length: Mm, step: Mm): Mm => Math.round(length / step) * step;

/** The nearer side at a whole number of steps from the nearest edge of what it lies on or stands between. */
export function roundDistances(on: SnapAxis): Offer[] {
  const step = rulerStep(on.input.style, on.input.reach);
  const walls = wallsOf(on);
  const [nearest] = [
    ...(walls.low ? [{ side: 'low', wall: walls.low, away: on.span.low - walls.low.at } as const] : []),
    ...(walls.high ? [{ side: 'high', wall: walls.high, away: walls.high.at - on.span.high } as const] : []),
  ].sort((a, b) => a.away - b.away);
  const own = ownEdges(on).find((one) => one.side === nearest?.side);
  if (!nearest || !own) return [];
  const { side, wall } = nearest;
  const distance = (side === 'low' ? 1 : -1) * Math.max(0, rounded(nearest.away, step));
  const at = wall.at + distance;
  return [
    offerOf(on, {
      reading: 'distance',
      side,
      at,
      miss: at - own.at,
      prefer: wall.prefer,
      rule: { kind: 'set', axis: on.axis, edge: own.edge, from: wall.edge, distance },
      dimensions: [dimensionAlong(on, wall.at, at)],
    }),
  ];
}
