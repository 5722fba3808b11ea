import { Plus, Trash2 } from 'lucide-react';
import type { ShedSupplies } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { useSay } from '../../control/useSay.ts';
import { tables } from '../../shipped/tables.ts';
import { useWords } from '../../words/t.ts';
import type { SuppliesProps } from './suppliesProps.ts';

type Screws = ShedSupplies['owned']['screws'][number];

/** Screws at hand, by kind and length. */
export function ShedScrews({ design, supplies, put }: SuppliesProps) {
  const t = useWords();
  const say = useSay();
  const { owned } = supplies;
  const kinds = tables().screws;
  const keep = (screws: readonly Screws[]) => put({ owned: { ...owned, screws: [...screws] } });
  const change = (i: number, fields: Partial<Screws>) =>
    keep(owned.screws.map((s, k) => (k === i ? { ...s, ...fields } : s)));
  const lengthsOf = (screw: string) => kinds.find((s) => s.id === screw)?.lengths ?? [];
  const add = () => {
    const kind = kinds.find((s) => s.id === design.fastening.screw) ?? kinds[0];
    const length = kind?.lengths[0];
    if (kind && length !== undefined) keep([...owned.screws, { screw: kind.id, length, count: 20 }]);
  };
  return (
    <fieldset className="price-rows">
      <legend>{t('shed.screws')}</legend>
      {owned.screws.map((screws, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no ids, and two may be the same for a while
        <div className="shed-row" key={i}>
          <ChoiceField
            label={t('brads.screw')}
            value={screws.screw}
            choices={kinds.map((s) => ({ value: s.id, label: s.name }))}
            onCommit={(screw) => {
              const lengths = lengthsOf(screw);
              change(i, {
                screw,
                length: lengths.includes(screws.length) ? screws.length : (lengths[0] ?? screws.length),
              });
            }}
          />
          <div className="row-fields">
            <ChoiceField
              label={t('shed.length')}
              value={String(screws.length)}
              choices={lengthsOf(screws.screw).map((mm) => ({ value: String(mm), label: say.short(mm) }))}
              onCommit={(length) => change(i, { length: Number(length) })}
            />
            <NumberField
              label={t('owned.count')}
              whole
              min={1}
              max={100_000}
              value={screws.count}
              onCommit={(count) => change(i, { count })}
            />
            <button
              type="button"
              className="btn bare icon"
              aria-label={t('shed.removeScrews', { number: i + 1 })}
              onClick={() => keep(owned.screws.filter((_, k) => k !== i))}
            >
              <Trash2 aria-hidden="true" />
            </button>
          </div>
        </div>
      ))}
      <button type="button" className="btn small" onClick={add}>
        <Plus aria-hidden="true" />
        {t('shed.addScrews')}
      </button>
    </fieldset>
  );
}
