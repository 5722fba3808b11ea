import { useMemo } from 'react';
import { benchSteps, doneAmong } from '../../../cutting/atSaw.ts';
import { idsOfBars } from '../../../design/made.ts';
import { groupPieces } from '../../../joinery/label.ts';
import type { Plan } from '../../../plan/types.ts';
import { Section } from '../../control/Section.tsx';
import { useTicks } from '../../kept/ticked.ts';
import { useWords } from '../../words/t.ts';
import { PieceCard } from './PieceCard.tsx';
import { whereCut } from './where.ts';

/** Every piece to cut, the same ones together. */
export function Pieces({ plan }: { plan: Plan }) {
  const t = useWords();
  const { ticked, tick } = useTicks('cut');
  const { pieces } = plan.joinery;
  const bars = useMemo(() => idsOfBars(plan.layout.parts), [plan.layout.parts]);
  const groups = useMemo(() => groupPieces(pieces), [pieces]);
  const where = useMemo(() => whereCut(plan.cutting), [plan.cutting]);
  // Counted as at the saw, where cuts of sheets are done one by one.
  const steps = useMemo(() => benchSteps(plan.cutting, pieces), [plan.cutting, pieces]);
  if (pieces.length === 0) return <p className="note">{t('wood.none')}</p>;
  const done = doneAmong(steps, ticked).size;
  return (
    <Section id="wood-pieces" title="wood.pieces" count={t('bench.progress', { done, all: steps.length })}>
      <p className="note">{t('wood.piecesLead', { pieces: pieces.length, labels: groups.length })}</p>
      <ul className="piece-cards">
        {groups.map((group) => (
          <PieceCard
            key={group.label}
            group={group}
            bar={bars.has(group.pieces[0].part)}
            stock={plan.stocks.get(group.pieces[0].stock)}
            where={where}
            cut={ticked}
            onCut={tick}
          />
        ))}
      </ul>
    </Section>
  );
}
