import type { Mm } from '../../measure/units.ts';

/** A kind of rectangle and what one of it is worth. */
export interface ValuedType {
  readonly w: Mm;
  readonly h: Mm;
  readonly value: number;
  /** Most copies; absent: as many as there is room for. */
  readonly max?: number | undefined;
}

export interface ValuedPlacement {
  readonly type: number;
  readonly x: Mm;
  readonly y: Mm;
  readonly w: Mm;
  readonly h: Mm;
  readonly turned: boolean;
}

export interface ValuedLayout {
  readonly value: number;
  readonly layout: readonly ValuedPlacement[];
  /** No guillotine pattern is worth more. */
  readonly proved: boolean;
}

/** An orientation in which a type fits the sheet. */
export interface Way {
  readonly type: number;
  readonly w: Mm;
  readonly h: Mm;
  readonly turned: boolean;
}
