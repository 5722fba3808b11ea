import type { Design, ShedSupplies } from '../../../design/schema.ts';
import type { Container } from '../../../materials/types.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { tables } from '../../shipped/tables.ts';
import { t, useWords } from '../../words/t.ts';
import type { SuppliesProps } from './suppliesProps.ts';

type Price = FormField<ShedSupplies>;

const currency = (_: unknown, { measure }: Design) => measure.currency;

/** What is bought by its own price: what the design names, and what is sold in its system of measures. */
const priceField = (id: string, name: string, price: number): Price => ({
  is: 'number',
  label: { name },
  unit: currency,
  get: ({ prices }) => prices[id] ?? price,
  put: (next, { prices }) => ({ prices: { ...prices, [id]: next } }),
});

/** Primer by the can; one without a price is not bought. */
const primerField = ({ id, name }: Container): Price => ({
  is: 'number',
  label: { name: t('shed.primerCan', { can: name }) },
  unit: currency,
  get: ({ primer }) => primer.find((p) => p.container === id)?.price ?? 0,
  put: (price, { primer }) => {
    const others = primer.filter((p) => p.container !== id);
    return { primer: price > 0 ? [...others, { container: id, price }] : others };
  },
});

function priceFields({ fastening, paint, pages }: Design): readonly Price[] {
  const all = tables();
  const named = [
    ...all.brads.filter((b) => b.id === fastening.brad),
    ...all.screws.filter((s) => s.id === fastening.screw),
    ...all.glues.filter((g) => g.system === paint.containers),
    ...all.tapes.filter((r) => r.system === paint.containers),
    ...all.papers
      .filter((p) => p.id === pages.paper)
      .map(({ id, name }) => ({ id, name: t('shed.page', { paper: name }), price: 0 })),
  ];
  return [
    ...named.map(({ id, name, price }) => priceField(id, name, price)),
    ...all.containers.filter((c) => c.system === paint.containers).map(primerField),
  ];
}

/** What a box, a bottle, a roll, a can and a page cost where the person buys them. */
export function SupplyPrices({ design, supplies, put }: SuppliesProps) {
  useWords();
  return (
    <details className="more">
      <summary>{t('shed.prices')}</summary>
      <p className="note">{t('shed.pricesHint')}</p>
      <FieldGrid of={priceFields(design)} value={supplies} onChange={put} />
    </details>
  );
}
