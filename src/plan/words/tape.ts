import { isSquareEnded } from '../../joinery/lengths.ts';
import type { Measured, Piece, TapeCorner } from '../../joinery/piece.ts';

/** How the tape lies that reads the length of a piece. Of its edges the left one lies up, show face up. */
export interface TapeWords {
  readonly edge: { readonly [E in Measured['edge']]: string };
  readonly corner: { readonly [C in TapeCorner]: string };
  readonly along: (edge: string, from: string, to: string) => string;
  /** Said where an end is beveled, so that the back of the piece is of another length. */
  readonly onShowFace: (tape: string) => string;
}

/** Which edge and which corners a length is read between; empty where any edge tells the same. */
export function tapeWords(piece: Piece, words: TapeWords): string {
  if (isSquareEnded(piece)) return '';
  const { edge, from, to } = piece.measured;
  const named = words.edge[edge];
  const tape = edge === 'overall' ? named : words.along(named, words.corner[from], words.corner[to]);
  return piece.ends.some(({ bevel }) => bevel !== 0) ? words.onShowFace(tape) : tape;
}
