import { NO_SUPPLIES, USUAL_SPARE } from '../../../design/defaults.ts';
import type { ShedSupplies } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { canUnit, ounceUnit } from '../facts/rateUnit.ts';
import { useChange } from '../facts/useChange.ts';
import { ShedScrews } from './ShedScrews.tsx';
import { SupplyPrices } from './SupplyPrices.tsx';

const MOST_LITERS = 1000;
const MOST_TAPE = 1_000_000;

const FIELDS: readonly FormField<ShedSupplies['owned']>[] = [
  { is: 'amount', label: 'shed.primer', field: 'primer_l', unit: canUnit, digits: 2, most: MOST_LITERS },
  { is: 'amount', label: 'shed.glue', field: 'glue_l', unit: ounceUnit, digits: 1, most: MOST_LITERS },
  { is: 'length', label: 'shed.tape', field: 'tape', max: MOST_TAPE },
];

const SPARE: readonly FormField<NonNullable<ShedSupplies['spare']>>[] = [
  { is: 'share', label: 'wood.boardsTitle', field: 'boards', max: 100 },
  { is: 'share', label: 'wood.sheetsTitle', field: 'sheets', max: 100 },
  { is: 'share', label: 'shed.spareFasteners', field: 'fasteners', max: 100 },
  { is: 'switch', label: 'shed.spareOne', field: 'one', place: 'wide' },
];

/** What is at hand of primer, glue, tape and screws, and what they cost. */
export function ShedFields() {
  const t = useWords();
  const design = useSettledDesign();
  const { set } = useChange();
  const supplies = design.supplies ?? NO_SUPPLIES;
  const { owned, spare = USUAL_SPARE } = supplies;
  const put = (fields: Partial<ShedSupplies>) => set('supplies', { ...supplies, ...fields }, t('shed.title'));
  const own = (fields: Partial<ShedSupplies['owned']>) => put({ owned: { ...owned, ...fields } });
  return (
    <Section id="wood-shed" title="shed.title">
      <p className="note">{t('shed.lead')}</p>
      <FieldGrid three of={FIELDS} value={owned} onChange={own} />
      <ShedScrews design={design} supplies={supplies} put={put} />
      <h4 className="section-sub">{t('shed.spare')}</h4>
      <p className="note">{t('shed.spareHint')}</p>
      <FieldGrid
        three
        of={SPARE}
        value={spare}
        onChange={(fields) => put({ spare: { ...spare, ...fields } })}
      />
      <SupplyPrices design={design} supplies={supplies} put={put} />
    </Section>
  );
}
