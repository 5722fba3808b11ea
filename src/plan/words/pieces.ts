import { groupPieces } from '../../joinery/label.ts';
import type { Piece } from '../../joinery/piece.ts';
import { isLetterOf } from '../letters.ts';
import { partNames, type Say } from './words.ts';

/**
 * Names of what pieces of one label belong to, each once: parts with the count of their members as in the
 * order of work, letters of a sign by their own names.
 */
export function pieceNames(pieces: readonly Piece[], say: Say): string[] {
  const isLetter = (piece: Piece): boolean => isLetterOf(piece.part, piece);
  const parts = new Set(pieces.filter((piece) => !isLetter(piece)).map(({ part }) => part));
  const letters = new Set(pieces.filter(isLetter).map(({ name }) => name));
  return [...partNames([...parts], say), ...letters];
}

/** Names of the pieces that are sawn alike, by their label: whichever of them is sawn now, it serves for any. */
export function namesByLabel(pieces: readonly Piece[], say: Say): ReadonlyMap<string, string> {
  return new Map(groupPieces(pieces).map((group) => [group.label, pieceNames(group.pieces, say).join(', ')]));
}
