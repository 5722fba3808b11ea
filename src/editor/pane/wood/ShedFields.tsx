import { NO_SUPPLIES } from '../../../design/defaults.ts';
import type { ShedSupplies } from '../../../design/schema.ts';
import { MeasureField } from '../../control/MeasureField.tsx';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { canUnit, ounceUnit } from '../facts/rateUnit.ts';
import { UnitField } from '../facts/UnitField.tsx';
import { useChange } from '../facts/useChange.ts';
import { ShedScrews } from './ShedScrews.tsx';
import { SupplyPrices } from './SupplyPrices.tsx';

const MOST_LITERS = 1000;
const MOST_TAPE = 1_000_000;

/** What is at hand of primer, glue, tape and screws, and what they cost. */
export function ShedFields() {
  const t = useWords();
  const design = useSettledDesign();
  const { set } = useChange();
  const supplies = design.supplies ?? NO_SUPPLIES;
  const { owned } = supplies;
  const put = (fields: Partial<ShedSupplies>) => set('supplies', { ...supplies, ...fields }, t('shed.title'));
  const own = (fields: Partial<ShedSupplies['owned']>) => put({ owned: { ...owned, ...fields } });
  return (
    <section aria-labelledby="wood-shed">
      <h3 id="wood-shed" className="section-title">
        {t('shed.title')}
      </h3>
      <p className="note">{t('shed.lead')}</p>
      <div className="fields three">
        <UnitField
          label={t('shed.primer')}
          unit={canUnit(design.measure)}
          digits={2}
          value={owned.primer_l}
          onCommit={(primer_l) => own({ primer_l: Math.min(MOST_LITERS, primer_l) })}
        />
        <UnitField
          label={t('shed.glue')}
          unit={ounceUnit(design.measure)}
          digits={1}
          value={owned.glue_l}
          onCommit={(glue_l) => own({ glue_l: Math.min(MOST_LITERS, glue_l) })}
        />
        <MeasureField
          label={t('shed.tape')}
          max={MOST_TAPE}
          value={owned.tape}
          onCommit={(tape) => own({ tape })}
        />
      </div>
      <ShedScrews design={design} supplies={supplies} put={put} />
      <SupplyPrices design={design} supplies={supplies} put={put} />
    </section>
  );
}
