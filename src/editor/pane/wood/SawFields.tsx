import type { Shop } from '../../../design/schema.ts';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';

const LENGTHS = ['boardKerf', 'sheetKerf', 'endTrim', 'edgeTrim', 'fitAllowance', 'keepOffcut'] as const;

/** What the saw takes and can do, and what is worth keeping. */
export function SawFields() {
  const t = useWords();
  const { shop } = useSettledDesign();
  const { set } = useChange();
  const put = (fields: Partial<Shop>) => set('shop', { ...shop, ...fields }, t('shopset.title'));
  return (
    <section aria-labelledby="wood-saw">
      <h3 id="wood-saw" className="section-title">
        {t('shopset.title')}
      </h3>
      <div className="fields">
        {LENGTHS.map((key) => (
          <MeasureField
            key={key}
            label={t(`shopset.${key}`)}
            value={shop[key]}
            onCommit={(mm) => put({ [key]: mm })}
          />
        ))}
        <NumberField
          label={t('shopset.miter')}
          unit="°"
          max={75}
          value={shop.saw.miter}
          onCommit={(miter) => put({ saw: { ...shop.saw, miter } })}
        />
        <NumberField
          label={t('shopset.bevel')}
          unit="°"
          max={60}
          value={shop.saw.bevel}
          onCommit={(bevel) => put({ saw: { ...shop.saw, bevel } })}
        />
      </div>
    </section>
  );
}
