import type { Check } from '../check/check.ts';
import type { Point } from '../geometry/shape.ts';
import type { Liters, Mm } from '../measure/units.ts';

export interface Fastened {
  readonly part: string;
  readonly how: 'brads' | 'screws' | 'glue' | 'none';
  /** Table id of the brad or screw. */
  readonly fastener: string | null;
  readonly length: Mm | null;
  readonly at: readonly Point[];
  /** Wood that may be driven into below each place, part and all, to the far side. */
  readonly depth: Mm;
  readonly glue: Liters;
}

export interface FasteningPlan {
  readonly parts: readonly Fastened[];
  readonly checks: readonly Check[];
}
