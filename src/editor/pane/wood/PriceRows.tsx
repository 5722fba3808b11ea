import { Plus, Trash2 } from 'lucide-react';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import type { OwnStock } from './ownStock.ts';

interface Size {
  readonly length: number;
  readonly width?: number;
  readonly price: number;
}

interface PriceRowsProps {
  readonly stock: OwnStock;
  readonly onChange: (stock: OwnStock) => void;
}

/** What lengths or sizes it is sold in, and for how much. */
export function PriceRows({ stock, onChange }: PriceRowsProps) {
  const t = useWords();
  const { currency } = useSettledDesign().measure;
  const sheet = stock.form === 'sheet';
  const rows: readonly Size[] = sheet ? stock.sizes : stock.lengths;
  const put = (next: readonly Size[]) => {
    if (stock.form === 'sheet')
      onChange({
        ...stock,
        sizes: next.map(({ length, width = length, price }) => ({ length, width, price })),
      });
    else onChange({ ...stock, lengths: next.map(({ length, price }) => ({ length, price })) });
  };
  const set = (i: number, fields: Partial<Size>) =>
    put(rows.map((row, k) => (k === i ? { ...row, ...fields } : row)));
  const last = rows.at(-1) ?? { length: 2438.4, width: 1219.2, price: 0 };
  return (
    <fieldset className="price-rows">
      <legend>{t(sheet ? 'stock.sizes' : 'stock.lengths')}</legend>
      {rows.map((row, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sizes have no ids, and two may be the same for a while
        <div className={sheet ? 'row-fields three' : 'row-fields'} key={i}>
          <MeasureField
            label={t(sheet ? 'stock.along' : 'stock.length')}
            min={1}
            value={row.length}
            onCommit={(length) => set(i, { length })}
          />
          {sheet ? (
            <MeasureField
              label={t('stock.across')}
              min={1}
              value={row.width ?? row.length}
              onCommit={(width) => set(i, { width })}
            />
          ) : null}
          <NumberField
            label={t('stock.price')}
            unit={currency}
            value={row.price}
            onCommit={(price) => set(i, { price })}
          />
          <button
            type="button"
            className="btn bare icon"
            aria-label={t('stock.removeLength', { number: i + 1, name: stock.name })}
            onClick={() => put(rows.filter((_, k) => k !== i))}
          >
            <Trash2 aria-hidden="true" />
          </button>
        </div>
      ))}
      <button type="button" className="btn small" onClick={() => put([...rows, last])}>
        <Plus aria-hidden="true" />
        {t(sheet ? 'stock.addSize' : 'stock.addLength')}
      </button>
    </fieldset>
  );
}
