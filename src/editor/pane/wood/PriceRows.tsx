import { Plus } from 'lucide-react';
import { Button } from '../../control/Button.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import { Remove } from '../../control/Remove.tsx';
import { useWords } from '../../words/t.ts';
import type { OwnStock } from './ownStock.ts';
import { LENGTH_FIELDS, SIZE_FIELDS, type Size } from './priceFields.ts';

/** What lengths or sizes it is sold in, and for how much. */
export function PriceRows({ stock, onChange }: { stock: OwnStock; onChange: (stock: OwnStock) => void }) {
  const t = useWords();
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
          <Fields
            of={sheet ? SIZE_FIELDS : LENGTH_FIELDS}
            value={row}
            onChange={(fields) => set(i, fields)}
          />
          <Remove
            label={t('stock.removeLength', { number: i + 1, name: stock.name })}
            onClick={() => put(rows.filter((_, k) => k !== i))}
          />
        </div>
      ))}
      <Button icon={Plus} look="small" onClick={() => put([...rows, last])}>
        {t(sheet ? 'stock.addSize' : 'stock.addLength')}
      </Button>
    </fieldset>
  );
}
