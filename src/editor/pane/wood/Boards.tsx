import { BadgeCheck, CircleHelp, Ruler } from 'lucide-react';
import { type ReactNode, useMemo, useState } from 'react';
import { numbered } from '../../../cutting/numbered.ts';
import type { BoardsBound, CutBoard } from '../../../cutting/result.ts';
import { grouped } from '../../../list/grouped.ts';
import type { Plan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { ReadBoards } from '../../frame/ReadBoards.tsx';
import { useSawing } from '../../state/job.ts';
import { useWords, type WordKey } from '../../words/t.ts';
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
      <ByStock plan={plan} id="wood-boards" title="wood.boardsTitle" of={boards} bounds={boardsBound}>
        {(board, number) => (
          <BoardCard
            key={number}
            {...common}
            board={board}
            number={number}
            longest={longestOf(boards, board.stock)}
          />
        )}
      </ByStock>
      <ByStock plan={plan} id="wood-sheets" title="wood.sheetsTitle" of={sheets} bounds={sheetsBound}>
        {(sheet, number) => <SheetCard key={number} {...common} sheet={sheet} number={number} />}
      </ByStock>
    </>
  );
}

/** Boards of one stock are drawn to one scale, so that they can be compared by eye. */
const longestOf = (boards: readonly CutBoard[], stock: string): number =>
  Math.max(...boards.filter((b) => b.stock === stock).map((b) => b.length));

interface ByStockProps<C> {
  readonly plan: Plan;
  readonly id: string;
  readonly title: WordKey;
  readonly of: readonly C[];
  readonly bounds: readonly BoardsBound[];
  readonly children: (cut: C, number: number) => ReactNode;
}

/** Boards or sheets, each numbered among all, under what they are of. */
function ByStock<C extends { readonly stock: string }>(props: ByStockProps<C>) {
  const { plan, id, title, of, bounds, children } = props;
  if (of.length === 0) return null;
  return (
    <Section id={id} title={title} count={of.length}>
      {[...grouped(numbered(of), ({ cut }) => cut.stock)].map(([stock, cuts]) => (
        <StockBlock key={stock} plan={plan} stock={stock} bounds={bounds}>
          {cuts.map(({ cut, number }) => children(cut, number))}
        </StockBlock>
      ))}
    </Section>
  );
}

interface StockBlockProps {
  readonly plan: Plan;
  readonly stock: string;
  readonly bounds: readonly BoardsBound[];
  readonly children: ReactNode;
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
