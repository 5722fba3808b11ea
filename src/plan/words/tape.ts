import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { ENDS } from '../../joinery/bar.ts';
import { endCurve, isSquareEnded } from '../../joinery/lengths.ts';
import type { Measured, Piece, TapeCorner } from '../../joinery/piece.ts';
import { formatReading } from '../../measure/format.ts';
import type { MeasureStyle } from '../../measure/style.ts';

/** How the tape lies that reads the length of a piece. Of its edges the left one lies up, show face up. */
export interface TapeWords {
  readonly edge: { readonly [E in Measured['edge']]: string };
  readonly corner: { readonly [C in TapeCorner]: string };
  readonly along: (edge: string, from: string, to: string) => string;
  /** Said where an end is beveled, so that the back of the piece is of another length. */
  readonly onShowFace: (tape: string) => string;
  /** What is left to do at an end that no saw cuts, and how deep its curve is. */
  readonly curved: (depth: string) => string;
  /** How far what is cut straight is bent, by the radius of its inner edge. */
  readonly bent: (radius: string) => string;
}

/** Which edge and which corners a length is read between; empty where any edge tells the same. */
export function tapeWords(piece: Piece, words: TapeWords): string {
  if (isSquareEnded(piece)) return '';
  const { edge, from, to } = piece.measured;
  const named = words.edge[edge];
  const tape = edge === 'overall' ? named : words.along(named, words.corner[from], words.corner[to]);
  return piece.ends.some(({ bevel }) => bevel !== 0) ? words.onShowFace(tape) : tape;
}

/**
 * What is left to do with a bar once it is cut: it is bent, or its ends are marked from their pattern, with the larger depth
 * of their curves; empty where nothing is.
 */
export function curveWords(piece: Piece, words: TapeWords, measure: MeasureStyle): string {
  if (piece.bent) return words.bent(formatReading(piece.bent.radius, measure));
  const depths = ENDS.map((end) => endCurve(piece, end)?.depth ?? 0).filter((depth) => depth > SAME_PLACE);
  // How deep a curve is counts where it is less than an eighth of an inch too.
  return depths.length > 0
    ? words.curved(formatReading(Math.max(...depths), { ...measure, fraction: '32' }))
    : '';
}
