import type { Check } from '../check/check.ts';
import type { Deg, Mm, Money } from '../measure/units.ts';

/** A saw cut across a board. */
export interface BoardCut {
  /** Piece id. */
  readonly piece: string;
  /** Long-point extent along the board, from its left end. */
  readonly from: Mm;
  readonly to: Mm;
  /**
   * Turned end for end (flat stock only), so that a miter is shared with its neighbor: the show face stays
   * up, the start end comes to lie right and the left edge below.
   */
  readonly flipped: boolean;
  /** Miter at the left and right end as it lies on the board; 0 is square. */
  readonly left: Deg;
  readonly right: Deg;
}

/** One board and what is cut from it, from left to right. */
export interface CutBoard {
  readonly stock: string;
  readonly length: Mm;
  /** Id of the owned offcut it is, or null when bought. */
  readonly owned: string | null;
  readonly cuts: readonly BoardCut[];
  /** Usable rest at the right end; 0 when below the shop's limit. */
  readonly offcut: Mm;
  /**
   * Wood lost to kerf, slanted ends, trim, defects and rest too short to keep, as a length of whole board:
   * with `offcut` and the pieces' areas over the stock's width it adds up to `length`.
   */
  readonly waste: Mm;
  readonly cost: Money;
}

/** How near a stock's plan is to the least; an unpriced size among priced ones is reckoned at the dearest rate. */
export interface BoardsBound {
  readonly stock: string;
  /** Bought; what is owned does not count. */
  readonly used: number;
  /** No plan can buy fewer boards than this (or spend less than `lowerCost`). */
  readonly lowerBound: number;
  readonly cost: Money;
  readonly lowerCost: Money;
  /** Nothing costs less than this plan; where nothing has a price: no less wood will do. */
  readonly proved: boolean;
}

export interface SheetPlacement {
  readonly piece: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly w: Mm;
  readonly h: Mm;
  readonly turned: boolean;
  /** The blank that it is sawn out of with others, where they lie in each other. */
  readonly from?: { readonly x: Mm; readonly y: Mm; readonly w: Mm; readonly h: Mm };
}

/** One edge-to-edge cut of the sequence. */
export interface SheetCut {
  readonly number: number;
  /** `rip`: along the sheet's length (parallel to x); `cross`: across it. What people read is told by `wayOf`. */
  readonly kind: 'rip' | 'cross';
  /** Piece of sheet it cuts, in sheet coordinates. */
  readonly of: { readonly x: Mm; readonly y: Mm; readonly w: Mm; readonly h: Mm };
  /** Distance of the fence or guide from that piece's low edge to the near side of the kerf. */
  readonly fence: Mm;
}

export interface CutSheet {
  readonly stock: string;
  readonly length: Mm;
  readonly width: Mm;
  readonly owned: string | null;
  readonly placements: readonly SheetPlacement[];
  readonly sequence: readonly SheetCut[];
  /** Rests worth keeping. */
  readonly offcuts: readonly { readonly x: Mm; readonly y: Mm; readonly w: Mm; readonly h: Mm }[];
  readonly cost: Money;
}

export interface Cutting {
  readonly boards: readonly CutBoard[];
  readonly boardsBound: readonly BoardsBound[];
  readonly sheets: readonly CutSheet[];
  readonly sheetsBound: readonly BoardsBound[];
  /** Where some of it is done: what had been said of the job when each stock's plan was made, by its id. */
  readonly basis?: Readonly<Record<string, number>>;
  readonly checks: readonly Check[];
}
