import { BadgeCheck, CircleHelp, Ruler } from 'lucide-react';
import { useMemo, useState } from 'react';
import { numbered } from '../../../cutting/numbered.ts';
import type { BoardsBound, CutBoard } from '../../../cutting/result.ts';
import type { Plan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { ReadBoards } from '../../frame/ReadBoards.tsx';
import { useSawing } from '../../state/job.ts';
import { useWords } from '../../words/t.ts';
import { BoardCard } from './BoardCard.tsx';
import { SheetCard } from './SheetCard.tsx';
import '../../words/sawWords.ts';

/** Every board and sheet with what is cut from it, stock by stock. */
export function Boards({ plan }: { plan: Plan }) {
  const t = useWords();
  const { ticked, tick } = useSawing(plan);
  const { boards, boardsBound, sheets, sheetsBound } = plan.cutting;
  const pieces = useMemo(() => new Map(plan.joinery.pieces.map((p) => [p.id, p])), [plan.joinery.pieces]);
  if (boards.length + sheets.length === 0) return <p className="note">{t('wood.none')}</p>;
  const onCut = (ids: readonly string[], on: boolean) =>
    tick(
      ids,
      on,
      t(on ? 'job.cut' : 'job.uncut', { what: ids.map((id) => pieces.get(id)?.label).join(', ') }),
    );
  const common = { plan, pieces, cut: ticked, onCut };
  return (
    <>
      {boards.length > 0 ? (
        <Section id="wood-boards" title="wood.boardsTitle" count={boards.length}>
          {stocksOf(boards).map((id) => (
            <StockBlock key={id} plan={plan} stock={id} bounds={boardsBound}>
              {numbered(boards).map(({ number, cut: board }) =>
                board.stock === id ? (
                  <BoardCard
                    key={number}
                    {...common}
                    board={board}
                    number={number}
                    longest={longestOf(boards, id)}
                  />
                ) : null,
              )}
            </StockBlock>
          ))}
        </Section>
      ) : null}
      {sheets.length > 0 ? (
        <Section id="wood-sheets" title="wood.sheetsTitle" count={sheets.length}>
          {stocksOf(sheets).map((id) => (
            <StockBlock key={id} plan={plan} stock={id} bounds={sheetsBound}>
              {numbered(sheets).map(({ number, cut: sheet }) =>
                sheet.stock === id ? (
                  <SheetCard key={number} {...common} sheet={sheet} number={number} />
                ) : null,
              )}
            </StockBlock>
          ))}
        </Section>
      ) : null}
    </>
  );
}

/** Boards of one stock are drawn to one scale, so that they can be compared by eye. */
const longestOf = (boards: readonly CutBoard[], stock: string): number =>
  Math.max(...boards.filter((b) => b.stock === stock).map((b) => b.length));

const stocksOf = (cut: readonly { readonly stock: string }[]): string[] => [
  ...new Set(cut.map((c) => c.stock)),
];

interface StockBlockProps {
  readonly plan: Plan;
  readonly stock: string;
  readonly bounds: readonly BoardsBound[];
  readonly children: React.ReactNode;
}

function StockBlock({ plan, stock, bounds, children }: StockBlockProps) {
  const t = useWords();
  const [reading, setReading] = useState(false);
  const bound = bounds.find((b) => b.stock === stock);
  const of = plan.stocks.get(stock);
  return (
    <div className="stock-block">
      <div className="stock-block-head">
        <Typeset as="h4" text={of?.name ?? stock} />
        {bound ? <BoundLine bound={bound} /> : null}
        {of ? (
          <Button
            icon={Ruler}
            look="small"
            label={t('boards.openLong', { stock: of.name })}
            onClick={() => setReading(true)}
          >
            {t('boards.open')}
          </Button>
        ) : null}
      </div>
      {of && reading ? <ReadBoards plan={plan} stock={of} onClose={() => setReading(false)} /> : null}
      <ul>{children}</ul>
    </div>
  );
}

/** How good a cutting plan is known to be, in honest words. */
function BoundLine({ bound }: { bound: BoardsBound }) {
  const t = useWords();
  const say = useSay();
  const { proved, used, cost, lowerBound, lowerCost } = bound;
  return (
    <p className={proved ? 'bound proved' : 'bound'}>
      {proved ? <BadgeCheck aria-hidden="true" /> : <CircleHelp aria-hidden="true" />}
      <span>{t('wood.counted', { count: used, cost: say.money(cost) })}</span>
      <span>
        {proved ? t('wood.proved') : t('wood.notProved', { bound: lowerBound, cost: say.money(lowerCost) })}
      </span>
    </p>
  );
}
