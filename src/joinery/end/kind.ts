import type { ShapedStock, Stock } from '../../materials/types.ts';
import type { Deg, Mm } from '../../measure/units.ts';
import type { EndCut, PieceEnd } from '../piece.ts';

/** What is known of an end once its outline is cut. */
export interface EndCase {
  /** Saw angle of the cut; of a point, of the cut at the left edge. */
  readonly miter: Deg;
  /** Saw angle of the other cut of a point, at the right edge. */
  readonly secondMiter: Deg | null;
  readonly with: string | null;
  readonly stock: Stock | null;
  /** Interior angle of the corner, where sprung molding turns one here. */
  readonly corner: Deg | null;
}

/** What an end needs from the piece it runs against. */
export interface Against {
  readonly through: Stock | null;
  readonly ownThickness: Mm;
}

/** How one kind of end is sawn. */
export interface EndKind {
  settle(at: EndCase): PieceEnd;
  /** Wood that the end needs beyond the line where it is seen to stop. */
  reach(against: Against): Mm;
}

/** The edge that a plain cut leaves longer. */
export const longEdge = (miter: Deg): PieceEnd['long'] => (miter > 0 ? 'left' : miter < 0 ? 'right' : 'both');

/** An end with one plain cut. */
export const plainEnd = (cut: EndCut, at: EndCase): PieceEnd => ({
  cut,
  miter: at.miter,
  bevel: 0,
  long: longEdge(at.miter),
  with: at.with,
  second: null,
  nested: null,
});

export const noReach = (): Mm => 0;

/** A kind of end with one plain cut, which needs no wood beyond it. */
export const plainKind = (cut: EndCut): EndKind => ({ settle: (at) => plainEnd(cut, at), reach: noReach });

/** The stock when it is sprung molding. */
export function sprungStock(stock: Stock | null): (ShapedStock & { readonly spring: Deg }) | null {
  return stock?.form === 'shaped' && stock.spring !== undefined ? { ...stock, spring: stock.spring } : null;
}
