import type { Design } from '../../../design/schema.ts';
import { isInch } from '../../../measure/style.ts';
import { KG_PER_POUND } from '../../../measure/units.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { useSay } from '../../control/useSay.ts';
import { tables } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { UnitField } from '../facts/UnitField.tsx';
import { useChange } from '../facts/useChange.ts';

const LENGTHS = ['spacing', 'fromEdge', 'shortOfFar', 'bite'] as const;

/** Mass as a person says it: kilograms inside. */
export const massUnit = (measure: Design['measure']) =>
  isInch(measure.unit) ? { name: 'lb', size: KG_PER_POUND } : { name: 'kg', size: 1 };

/** What is driven, how far apart, and how deep. */
export function FastenerFields() {
  const t = useWords();
  const say = useSay();
  const { fastening, measure } = useSettledDesign();
  const { set } = useChange();
  const put = (fields: Partial<Design['fastening']>) =>
    set('fastening', { ...fastening, ...fields }, t('brads.settings'));
  const brad = tables().brads.find((b) => b.id === fastening.brad);
  const has = (mm: number) => fastening.lengths.some((l) => Math.abs(l - mm) < 0.01);
  return (
    <section aria-labelledby="brads-settings">
      <h3 id="brads-settings" className="section-title">
        {t('brads.settings')}
      </h3>
      <div className="fields">
        <ChoiceField
          label={t('brads.brad')}
          value={fastening.brad}
          choices={tables().brads.map((b) => ({ value: b.id, label: b.name }))}
          // Lengths at hand are those of one kind of brad.
          onCommit={(id) => put({ brad: id, lengths: [] })}
        />
        <ChoiceField
          label={t('brads.screw')}
          value={fastening.screw}
          choices={tables().screws.map((s) => ({ value: s.id, label: s.name }))}
          onCommit={(screw) => put({ screw })}
        />
        {LENGTHS.map((key) => (
          <MeasureField
            key={key}
            label={t(`brads.${key}`)}
            min={key === 'spacing' || key === 'bite' ? 1 : 0}
            value={fastening[key]}
            onCommit={(mm) => put({ [key]: mm })}
          />
        ))}
        <UnitField
          label={t('brads.screwOver')}
          unit={massUnit(measure)}
          digits={1}
          min={0.1}
          value={fastening.screwOver_kg}
          onCommit={(screwOver_kg) => put({ screwOver_kg })}
        />
      </div>
      <details className="more">
        <summary>{t('brads.lengths')}</summary>
        <p className="note">{t('brads.lengthsHint')}</p>
        <div className="length-ticks">
          {brad?.lengths.map((mm) => (
            <SwitchField
              key={mm}
              label={say.short(mm)}
              value={has(mm)}
              onCommit={(on) =>
                put({
                  lengths: on
                    ? [...fastening.lengths, mm].sort((a, b) => a - b)
                    : fastening.lengths.filter((l) => Math.abs(l - mm) >= 0.01),
                })
              }
            />
          ))}
        </div>
      </details>
    </section>
  );
}
