import { groupPieces } from '../../joinery/label.ts';
import type { Piece } from '../../joinery/piece.ts';
import { designPart } from '../../layout/reference.ts';
import { grouped } from '../../list/grouped.ts';
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
  return [...partNames(parts, say), ...letters];
}

/** What each piece is called at the saw, by its id: its part, with the count of those of that part sawn alike. */
export function namesAtSaw(pieces: readonly Piece[], say: Say): ReadonlyMap<string, string> {
  return new Map(
    groupPieces(pieces).flatMap((group) =>
      [...grouped(group.pieces, ({ part }) => designPart(part)).values()].flatMap((own) => {
        const name = pieceNames(own, say).join(', ');
        return own.map(({ id }) => [id, name] as const);
      }),
    ),
  );
}
