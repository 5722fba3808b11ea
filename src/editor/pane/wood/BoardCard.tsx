import { useMemo } from 'react';
import { boardDrawing } from '../../../cutting/boardDrawing.ts';
import type { CutBoard } from '../../../cutting/result.ts';
import { unusedOn } from '../../../job/unused.ts';
import type { Piece } from '../../../joinery/piece.ts';
import { under } from '../../../list/at.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Plan } from '../../../plan/types.ts';
import { DrawingView } from '../../control/DrawingView.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { type PaneSay, useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';

interface BoardCardProps {
  readonly plan: Plan;
  readonly board: CutBoard;
  readonly number: number;
  readonly pieces: ReadonlyMap<string, Piece>;
  /** Length that fills the width, so that boards can be compared by eye. */
  readonly longest: Mm;
  readonly cut: ReadonlySet<string>;
  readonly onCut: (ids: readonly string[], on: boolean) => void;
}

/** A board to scale, and its pieces from left to right to tick off. */
export function BoardCard({ plan, board, number, pieces, longest, cut, onCut }: BoardCardProps) {
  const t = useWords();
  const say = useSay();
  const stock = plan.stocks.get(board.stock);
  const width = board.cuts.map((c) => pieces.get(c.piece)?.width).find((w) => w !== undefined) ?? 0;
  const drawing = useMemo(
    () =>
      boardDrawing({
        board,
        pieces,
        width,
        unused: unusedOn(board, plan.design),
        text: cuttingText(say, t),
        paper: 110,
        longest,
      }),
    [plan, board, pieces, width, say, t, longest],
  );
  const labels = board.cuts.map((c) => under(pieces, c.piece).label).join(', ');
  return (
    <li className="board-card">
      <div className="item-head">
        <h5>{t('wood.board', { number })}</h5>
        <Typeset
          as="span"
          className="note"
          text={
            board.owned === null
              ? t('wood.bought', { length: say.short(board.length), price: say.money(board.cost) })
              : t('wood.owned', { length: say.short(board.length) })
          }
        />
      </div>
      <DrawingView
        drawing={drawing}
        className="board-drawing"
        label={t('wood.boardPicture', { number, stock: stock?.name ?? board.stock, pieces: labels })}
      />
      <ul className="ticks">
        {board.cuts.map((c) => {
          const piece = pieces.get(c.piece);
          if (!piece) return null;
          return (
            <li key={c.piece}>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={cut.has(c.piece)}
                  onChange={(e) => onCut([c.piece], e.currentTarget.checked)}
                />
                <strong>{piece.label}</strong>
                <Typeset text={say.short(piece.shown.length)} />
                <span className="hidden-text">
                  , {t('wood.of', { where: t('wood.board', { number }), name: say.name(piece.part) })}
                </span>
              </label>
            </li>
          );
        })}
        {board.offcut > 0 ? (
          <Typeset
            as="li"
            className="kept-offcut"
            text={t('wood.keeps', { what: t('wood.offcut', { along: say.short(board.offcut) }) })}
          />
        ) : null}
      </ul>
    </li>
  );
}

export const cuttingText = (say: PaneSay, t: ReturnType<typeof useWords>) => ({
  length: say.short,
  angle: say.angle,
  offcut: (along: Mm, across?: Mm) =>
    across === undefined
      ? t('wood.offcut', { along: say.short(along) })
      : t('wood.offcutSheet', { along: say.short(along), across: say.short(across) }),
});
