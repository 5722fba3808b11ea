import type { Box } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';
import type { Measured } from './measured.ts';

/** The bed as its builder knows it. `design/` validates this shape; the meaning of each measure is told there. */
export interface Bed {
  readonly pivotAlong: 'end' | 'side';
  readonly mattress: { readonly width: Mm; readonly length: Mm; readonly thickness: Mm };
  readonly allowance: { readonly width: Mm; readonly length: Mm };
  readonly frame: {
    readonly thickness: Mm;
    readonly depth: Mm;
    readonly runsPast: 'sides' | 'ends';
    readonly material: string;
  };
  readonly platform: { readonly thickness: Mm; readonly material: string };
  readonly cleats: {
    readonly below: Mm;
    readonly width: Mm;
    readonly depth: Mm;
    readonly runsPast: 'sides' | 'ends';
  };
  readonly skin: { readonly thickness: Mm; readonly material: string } | null;
  readonly pivot: {
    readonly height: Mm;
    readonly fromFace: Mm;
    readonly fromWall: Mm;
    readonly aboveEdge: Mm;
  };
  readonly legs: {
    readonly where: 'beside' | 'on-face';
    readonly length: Mm;
    readonly section: Mm;
    readonly fromEnd: Mm;
    readonly fromSide: Mm;
  };
  readonly ceiling: Mm;
  readonly wallBoard: { readonly thickness: Mm; readonly height: Mm };
  readonly beside: { readonly left: Mm | null; readonly right: Mm | null };
  readonly measured?: BedMeasured | undefined;
}

/** The bed as a tape reads it where it stands; absent: it is true. */
export interface BedMeasured {
  /** Outside of the frame boards. */
  readonly rim: Measured;
  /** The opening between the cleats. */
  readonly field: Measured;
  /** What the layout is square to: an edge of the face, or the level. */
  readonly keep: 'bottom' | 'top' | 'left' | 'right' | 'level';
  /** By how much the right end of the lower edge stands higher than the left one, by a level. */
  readonly rise: Mm;
  /** What takes the taper: the reveal around a layout that stays square, or a border that follows the edges. */
  readonly border: 'square' | 'along';
}

/** A place on the face that must stay free. */
export interface KeepClear {
  readonly id: string;
  readonly name: string;
  readonly why: 'hinge' | 'leg' | 'latch' | 'handle' | 'other';
  readonly box: Box;
  /** How far the thing there stands out of the face. */
  readonly height: Mm;
}
