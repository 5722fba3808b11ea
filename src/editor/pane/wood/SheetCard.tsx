import { useMemo } from 'react';
import type { CutSheet } from '../../../cutting/result.ts';
import { sheetDrawing } from '../../../cutting/sheetDrawing.ts';
import { wayOf } from '../../../cutting/sheets/way.ts';
import type { Piece } from '../../../joinery/piece.ts';
import type { Plan } from '../../../plan/types.ts';
import { DrawingView } from '../../control/DrawingView.tsx';
import { Measure } from '../../control/Measure.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';
import { cuttingText } from './BoardCard.tsx';

interface SheetCardProps {
  readonly plan: Plan;
  readonly sheet: CutSheet;
  readonly number: number;
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly cut: ReadonlySet<string>;
  readonly onCut: (ids: readonly string[], on: boolean) => void;
}

/** A sheet to scale with its numbered cuts, where to set the guide for each, and its pieces to tick off. */
export function SheetCard({ plan, sheet, number, pieces, cut, onCut }: SheetCardProps) {
  const t = useWords();
  const say = useSay();
  const stock = plan.stocks.get(sheet.stock);
  const drawing = useMemo(
    () =>
      sheetDrawing({
        sheet,
        pieces,
        kerf: plan.design.shop.sheetKerf,
        text: cuttingText(say, t),
        paper: { width: 120, height: 95 },
      }),
    [plan, sheet, pieces, say, t],
  );
  const size = `${say.short(sheet.length)} × ${say.short(sheet.width)}`;
  return (
    <li className="board-card">
      <div className="item-head">
        <h5>{t('wood.sheet', { number })}</h5>
        <Typeset
          as="span"
          className="note"
          text={
            sheet.owned === null
              ? t('wood.bought', { length: size, price: say.money(sheet.cost) })
              : t('wood.owned', { length: size })
          }
        />
      </div>
      <DrawingView
        drawing={drawing}
        className="sheet-drawing"
        label={t('wood.sheetPicture', {
          number,
          stock: stock?.name ?? sheet.stock,
          count: sheet.placements.length,
          cuts: sheet.sequence.length,
        })}
      />
      <ul className="ticks">
        {sheet.placements.map((place) => {
          const piece = pieces.get(place.piece);
          if (!piece) return null;
          return (
            <li key={place.piece}>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={cut.has(place.piece)}
                  onChange={(e) => onCut([place.piece], e.currentTarget.checked)}
                />
                <strong>{piece.label}</strong>
                <Typeset text={`${say.short(piece.shown.length)} × ${say.short(piece.shown.width)}`} />
                <span className="hidden-text">
                  , {t('wood.of', { where: t('wood.sheet', { number }), name: say.name(piece.part) })}
                </span>
              </label>
            </li>
          );
        })}
        {sheet.offcuts.map((o) => (
          <Typeset
            as="li"
            key={`${o.x},${o.y}`}
            className="kept-offcut"
            text={t('wood.keeps', {
              what: t('wood.offcutSheet', { along: say.short(o.w), across: say.short(o.h) }),
            })}
          />
        ))}
      </ul>
      {sheet.sequence.length > 0 ? <Sequence sheet={sheet} /> : null}
    </li>
  );
}

function Sequence({ sheet }: { sheet: CutSheet }) {
  const t = useWords();
  return (
    <>
      <Figures
        title="wood.sequence"
        columns={['wood.cutNumber', 'wood.ofPiece', 'wood.cutWay', 'wood.fence']}
      >
        {sheet.sequence.map((c) => (
          <tr key={c.number}>
            <th scope="row">{c.number}</th>
            <td>
              <Measure mm={c.of.w} /> × <Measure mm={c.of.h} />
            </td>
            <td>{t(wayOf(c) === 'rip' ? 'wood.rip' : 'wood.cross')}</td>
            <Measure as="td" mm={c.fence} />
          </tr>
        ))}
      </Figures>
      <p className="note">{t('wood.fenceHint')}</p>
    </>
  );
}
