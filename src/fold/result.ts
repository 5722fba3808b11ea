import type { Check } from '../check/check.ts';
import type { Deg, Mm } from '../measure/units.ts';

export interface Hit {
  readonly part: string;
  readonly what: 'floor' | 'wall' | 'ceiling' | 'legs' | 'side-left' | 'side-right' | 'wall-board';
  /** Swing angle at which it first touches, 0 stowed to 90 lowered. */
  readonly angle: Deg;
  /** How much thinner or shorter the part would have to be. */
  readonly over: Mm;
}

/** A polygon of the side view, in room coordinates: x from the wall into the room, y above the floor. */
export interface SideShape {
  readonly id: string;
  readonly kind: 'frame' | 'platform' | 'mattress' | 'part' | 'leg';
  readonly points: readonly { readonly x: Mm; readonly y: Mm }[];
}

export interface FoldPlan {
  /** Least clearances through the whole swing; negative: it hits. */
  readonly floorClear: Mm;
  readonly wallClear: Mm;
  readonly ceilingClear: Mm;
  /** From the wall to the farthest point of the swing. */
  readonly floorSpace: Mm;
  /** Angles at which each least clearance occurs. */
  readonly at: { readonly floor: Deg; readonly wall: Deg; readonly ceiling: Deg; readonly space: Deg };
  readonly hits: readonly Hit[];
  readonly checks: readonly Check[];
}
