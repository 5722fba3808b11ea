import type { Cutting } from '../../../cutting/result.ts';
import { t } from '../../words/t.ts';

/** Name of the board or sheet that each piece is cut from, by the piece's id. */
export function whereCut({
  boards,
  sheets,
}: Pick<Cutting, 'boards' | 'sheets'>): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  boards.forEach((board, i) => {
    for (const cut of board.cuts) found.set(cut.piece, t('wood.board', { number: i + 1 }));
  });
  sheets.forEach((sheet, i) => {
    for (const place of sheet.placements) found.set(place.piece, t('wood.sheet', { number: i + 1 }));
  });
  return found;
}
