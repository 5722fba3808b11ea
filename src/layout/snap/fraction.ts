import type { Design } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { MM_PER_INCH } from '../../measure/units.ts';
import { dimensionAlong } from './drawing.ts';
import { ownEdges } from './edge.ts';
import type { SnapAxis, SnapCandidate } from './snapping.ts';

const INCH_STEPS = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1].map((step) => step * MM_PER_INCH);
const METRIC_STEPS = [1, 5, 10];

/**
 * The coarsest step of the ruler that the hand can reach from anywhere: half a step is within reach. Never
 * finer than the measures that are shown.
 */
export function rulerStep(style: Design['measure'], tolerance: Mm): Mm {
  const inches = style.unit === 'in' || style.unit === 'ft-in';
  const finest = inches ? MM_PER_INCH / (style.fraction === 'decimal' ? 64 : Number(style.fraction)) : 1;
  const steps = (inches ? INCH_STEPS : METRIC_STEPS).filter((step) => step >= finest * (1 - 1e-9));
  return [...steps].reverse().find((step) => step <= 2 * tolerance) ?? finest;
}

/** The edge at whole steps from the face's low edge: a place, no rule. */
export function fractionSnaps(on: SnapAxis): SnapCandidate[] {
  const origin = on.targets.find((t) => t.edge.of === 'face' && t.edge.side === 'low');
  const own = ownEdges(on)[0];
  if (!origin || !own) return [];
  const step = rulerStep(on.input.style, on.input.tolerance);
  const at = origin.at + Math.round((own.at - origin.at) / step) * step;
  return [
    {
      kind: 'fraction',
      axis: on.axis,
      delta: at - own.at,
      rule: null,
      guides: [],
      dimensions: [dimensionAlong(on, origin.at, at)],
    },
  ];
}
