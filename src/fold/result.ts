import type { Check } from '../check/check.ts';
import type { Point } from '../geometry/shape.ts';
import type { Deg, Mm } from '../measure/units.ts';

export interface Hit {
  /** Laid part, `keep:` and the id of a keep-clear, or `bed:` and a body of the bed (`bed:mattress`). */
  readonly part: string;
  readonly what: 'floor' | 'wall' | 'ceiling' | 'legs' | 'side-left' | 'side-right' | 'wall-board';
  /** Swing angle at which it first touches, 0 stowed to 90 lowered. */
  readonly angle: Deg;
  /** How much thinner or shorter the part would have to be; where neither helps, how far it reaches in. */
  readonly over: Mm;
  /** Taken off its outer side to clear; null where no thickness would do. */
  readonly thinner: Mm | null;
  /** Taken off its upper or lower end to clear; null where no length would do. */
  readonly shorter: Mm | null;
  /** Where it first touches, in room coordinates. */
  readonly place: Point;
}

/** A polygon of the side view, in room coordinates: x from the wall into the room, y above the floor. */
export interface SideShape {
  readonly id: string;
  readonly kind: 'frame' | 'platform' | 'mattress' | 'skin' | 'part' | 'keep-clear' | 'leg';
  readonly points: readonly Point[];
}

export interface FoldPlan {
  /** Least clearances through the whole swing; negative: it hits. The feet of the legs stand on the floor. */
  readonly floorClear: Mm;
  readonly wallClear: Mm;
  readonly ceilingClear: Mm;
  /** Least distance from the wall board, 0 when it is touched; null where there is none. */
  readonly wallBoardClear: Mm | null;
  /** From the wall to the farthest point of the swing. */
  readonly floorSpace: Mm;
  /** Angles at which each least clearance occurs; for the wall board null where there is none. */
  readonly at: {
    readonly floor: Deg;
    readonly wall: Deg;
    readonly wallBoard: Deg | null;
    readonly ceiling: Deg;
    readonly space: Deg;
  };
  /** What comes closest: ids as in `Hit.part`. */
  readonly closest: {
    readonly floor: string;
    readonly wall: string;
    readonly wallBoard: string | null;
    readonly ceiling: string;
    readonly space: string;
  };
  /** Angle of the least of the clearances to floor, wall, wall board and ceiling. */
  readonly worst: Deg;
  /** Height of handles and latches above the floor, stowed and lowered. */
  readonly reach: readonly { readonly id: string; readonly stowed: Mm; readonly lowered: Mm }[];
  readonly hits: readonly Hit[];
  readonly checks: readonly Check[];
}
