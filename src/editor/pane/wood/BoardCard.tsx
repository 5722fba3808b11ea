import { useMemo } from 'react';
import { boardDrawing } from '../../../cutting/boardDrawing.ts';
import type { CutBoard } from '../../../cutting/result.ts';
import { unusedOn } from '../../../job/unused.ts';
import { under } from '../../../list/at.ts';
import type { Mm } from '../../../measure/units.ts';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { CutCard, type CutProps, cuttingText } from './CutCard.tsx';

interface BoardCardProps extends CutProps {
  readonly board: CutBoard;
  /** Length that fills the width, so that boards can be compared by eye. */
  readonly longest: Mm;
}

/** A board to scale, and its pieces from left to right to tick off. */
export function BoardCard({ plan, board, number, longest, ...rest }: BoardCardProps) {
  const t = useWords();
  const say = useSay();
  const { pieces } = rest;
  const width = board.cuts.map((c) => pieces.get(c.piece)?.width).find((w) => w !== undefined) ?? 0;
  const text = useMemo(() => cuttingText(say, t), [say, t]);
  const drawing = useMemo(
    () =>
      boardDrawing({ board, pieces, width, unused: unusedOn(board, plan.design), text, paper: 110, longest }),
    [plan, board, pieces, width, text, longest],
  );
  const stock = plan.stocks.get(board.stock)?.name ?? board.stock;
  const labels = board.cuts.map((c) => under(pieces, c.piece).label).join(', ');
  return (
    <CutCard
      {...rest}
      of={board}
      name={t('wood.board', { number })}
      size={say.short(board.length)}
      drawing={drawing}
      label={t('wood.boardPicture', { number, stock, pieces: labels })}
      lying={board.cuts.map((c) => c.piece)}
      sizeOf={({ shown }) => say.short(shown.length)}
      keeps={board.offcut > 0 ? [text.offcut(board.offcut)] : []}
    />
  );
}
