import { useMemo } from 'react';
import { doneAmong } from '../../../cutting/atSaw.ts';
import type { Cutting } from '../../../cutting/result.ts';
import { groupPieces } from '../../../joinery/label.ts';
import type { Plan } from '../../../plan/types.ts';
import { Section } from '../../control/Section.tsx';
import { useSawing } from '../../state/job.ts';
import { t, useWords } from '../../words/t.ts';
import { PieceCard } from './PieceCard.tsx';
import '../../words/sawWords.ts';

/** Every piece to cut, the same ones together. */
export function Pieces({ plan }: { plan: Plan }) {
  const t = useWords();
  const { steps, ticked, tick } = useSawing(plan);
  const { pieces } = plan.joinery;
  const groups = useMemo(() => groupPieces(pieces), [pieces]);
  const where = useMemo(() => whereCut(plan.cutting), [plan.cutting]);
  if (pieces.length === 0) return <p className="note">{t('wood.none')}</p>;
  // Counted as at the saw, where cuts of sheets are done one by one.
  const done = doneAmong(steps, ticked).size;
  return (
    <Section id="wood-pieces" title="wood.pieces" count={t('bench.progress', { done, all: steps.length })}>
      <p className="note">{t('wood.piecesLead', { pieces: pieces.length, labels: groups.length })}</p>
      <ul className="piece-cards">
        {groups.map((group) => (
          <PieceCard
            key={group.label}
            group={group}
            stock={plan.stocks.get(group.pieces[0].stock)}
            where={where}
            cut={ticked}
            onCut={(ids, on) => tick(ids, on, t(on ? 'job.cut' : 'job.uncut', { what: group.label }))}
          />
        ))}
      </ul>
    </Section>
  );
}

/** Name of the board or sheet that each piece is cut from, by the piece's id. */
function whereCut({ boards, sheets }: Pick<Cutting, 'boards' | 'sheets'>): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  boards.forEach((board, i) => {
    for (const cut of board.cuts) found.set(cut.piece, t('wood.board', { number: i + 1 }));
  });
  sheets.forEach((sheet, i) => {
    for (const place of sheet.placements) found.set(place.piece, t('wood.sheet', { number: i + 1 }));
  });
  return found;
}
