import { NumberField } from '../../control/NumberField.tsx';
import { tables } from '../../shipped/tables.ts';
import { useWords } from '../../words/t.ts';
import type { SuppliesProps } from './suppliesProps.ts';

/** What a box, a bottle, a roll, a can and a page cost where the person buys them. */
export function SupplyPrices({ design, supplies, put }: SuppliesProps) {
  const t = useWords();
  const { containers: system } = design.paint;
  const { currency } = design.measure;
  const all = tables();
  const entries = [
    ...all.brads.filter((b) => b.id === design.fastening.brad),
    ...all.screws.filter((s) => s.id === design.fastening.screw),
    ...all.glues.filter((g) => g.system === system),
    ...all.tapes.filter((r) => r.system === system),
    ...all.papers
      .filter((p) => p.id === design.pages.paper)
      .map(({ id, name }) => ({ id, name: t('shed.page', { paper: name }), price: 0 })),
  ];
  const primers = all.containers.filter((c) => c.system === system);
  const priceOfPrimer = (id: string) => supplies.primer.find((p) => p.container === id)?.price ?? 0;
  const setPrimer = (id: string, price: number) => {
    const others = supplies.primer.filter((p) => p.container !== id);
    put({ primer: price > 0 ? [...others, { container: id, price }] : others });
  };
  return (
    <details className="more">
      <summary>{t('shed.prices')}</summary>
      <p className="note">{t('shed.pricesHint')}</p>
      <div className="fields">
        {entries.map((entry) => (
          <NumberField
            key={entry.id}
            label={entry.name}
            unit={currency}
            value={supplies.prices[entry.id] ?? entry.price}
            onCommit={(price) => put({ prices: { ...supplies.prices, [entry.id]: price } })}
          />
        ))}
        {primers.map((can) => (
          <NumberField
            key={can.id}
            label={t('shed.primerCan', { can: can.name })}
            unit={currency}
            value={priceOfPrimer(can.id)}
            onCommit={(price) => setPrimer(can.id, price)}
          />
        ))}
      </div>
    </details>
  );
}
