import { useMemo } from 'react';
import type { CutSheet } from '../../../cutting/result.ts';
import { sheetDrawing } from '../../../cutting/sheetDrawing.ts';
import { wayOf } from '../../../cutting/sheets/way.ts';
import { Measure } from '../../control/Measure.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';
import { CutCard, type CutProps, cuttingText } from './CutCard.tsx';

/** A sheet to scale with its numbered cuts, where to set the guide for each, and its pieces to tick off. */
export function SheetCard({ plan, sheet, number, ...rest }: CutProps & { readonly sheet: CutSheet }) {
  const t = useWords();
  const say = useSay();
  const { pieces } = rest;
  const text = useMemo(() => cuttingText(say, t), [say, t]);
  const drawing = useMemo(() => {
    const kerf = plan.design.shop.sheetKerf;
    return sheetDrawing({ sheet, pieces, kerf, text, paper: { width: 120, height: 95 } });
  }, [plan, sheet, pieces, text]);
  const by = (length: number, width: number) => `${say.short(length)} × ${say.short(width)}`;
  return (
    <CutCard
      {...rest}
      of={sheet}
      name={t('wood.sheet', { number })}
      size={by(sheet.length, sheet.width)}
      drawing={drawing}
      label={t('wood.sheetPicture', {
        number,
        stock: plan.stocks.get(sheet.stock)?.name ?? sheet.stock,
        count: sheet.placements.length,
        cuts: sheet.sequence.length,
      })}
      lying={sheet.placements.map((place) => place.piece)}
      sizeOf={({ shown }) => by(shown.length, shown.width)}
      keeps={sheet.offcuts.map(({ w, h }) => text.offcut(w, h))}
    >
      {sheet.sequence.length > 0 ? <Sequence sheet={sheet} /> : null}
    </CutCard>
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
