import { Plus, Trash2 } from 'lucide-react';
import { Button } from '../../control/Button.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import { tables } from '../../shipped/tables.ts';
import { useWords } from '../../words/t.ts';
import { SCREW_FIELDS, SCREW_KIND, type Screws } from './priceFields.ts';
import type { SuppliesProps } from './suppliesProps.ts';

/** Screws at hand, by kind and length. */
export function ShedScrews({ design, supplies, put }: SuppliesProps) {
  const t = useWords();
  const { owned } = supplies;
  const kinds = tables().screws;
  const keep = (screws: readonly Screws[]) => put({ owned: { ...owned, screws: [...screws] } });
  const change = (i: number, fields: Partial<Screws>) =>
    keep(owned.screws.map((s, k) => (k === i ? { ...s, ...fields } : s)));
  const add = () => {
    const kind = kinds.find((s) => s.id === design.fastening.screw) ?? kinds[0];
    const length = kind?.lengths[0];
    if (kind && length !== undefined) keep([...owned.screws, { screw: kind.id, length, count: 20 }]);
  };
  return (
    <fieldset className="price-rows">
      <legend>{t('fixing.screws')}</legend>
      {owned.screws.map((screws, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no ids, and two may be the same for a while
        <div className="shed-row" key={i}>
          <Fields of={SCREW_KIND} value={screws} onChange={(fields) => change(i, fields)} />
          <div className="row-fields">
            <Fields of={SCREW_FIELDS} value={screws} onChange={(fields) => change(i, fields)} />
            <Button
              icon={Trash2}
              look="bare icon"
              label={t('shed.removeScrews', { number: i + 1 })}
              onClick={() => keep(owned.screws.filter((_, k) => k !== i))}
            />
          </div>
        </div>
      ))}
      <Button icon={Plus} look="small" onClick={add}>
        {t('shed.addScrews')}
      </Button>
    </fieldset>
  );
}
