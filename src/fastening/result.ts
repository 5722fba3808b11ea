import type { Check } from '../check/check.ts';
import type { Point } from '../geometry/shape.ts';
import type { Liters, Mm } from '../measure/units.ts';

export interface Fastened {
  readonly part: string;
  readonly how: 'brads' | 'screws' | 'glue' | 'none';
  /** Table id of the brad or screw; null for glue, and for a fitting, which brings its own. */
  readonly fastener: string | null;
  readonly length: Mm | null;
  /** Driven from the show face, or from behind so that nothing shows. */
  readonly from: 'front' | 'back';
  readonly at: readonly Point[];
  /** From where it is driven in to the far side, the part and all solid wood with it: the least of all places. */
  readonly depth: Mm;
  /** How deep it bites into what it holds to: the wood below the part, or the part when driven from behind. */
  readonly bite: Mm;
  readonly glue: Liters;
}

/** How many of one brad or screw the whole face takes. */
export interface FastenerUse {
  readonly how: 'brads' | 'screws';
  readonly fastener: string;
  readonly length: Mm;
  readonly count: number;
}

export interface FasteningPlan {
  /** In the order of the parts; one that is screwed and bradded comes twice, its glue with the first. */
  readonly parts: readonly Fastened[];
  readonly use: readonly FastenerUse[];
  readonly glue: Liters;
  readonly checks: readonly Check[];
}
