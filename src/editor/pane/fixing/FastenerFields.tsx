import type { Design } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { SwitchField } from '../../control/SwitchField.tsx';
import { useSay } from '../../control/useSay.ts';
import { tables } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { namesOf } from '../facts/choices.ts';
import { massUnit } from '../facts/rateUnit.ts';
import { useChange } from '../facts/useChange.ts';

const FIELDS: readonly FormField<Design['fastening']>[] = [
  {
    is: 'choice',
    label: 'brads.brad',
    of: () => namesOf(tables().brads),
    get: ({ brad }) => brad,
    // Lengths at hand are those of one kind of brad.
    put: (brad) => ({ brad, lengths: [] }),
  },
  { is: 'choice', label: 'brads.screw', field: 'screw', of: () => namesOf(tables().screws) },
  { is: 'length', label: 'brads.spacing', field: 'spacing', min: 1 },
  { is: 'length', label: 'brads.fromEdge', field: 'fromEdge' },
  { is: 'length', label: 'brads.shortOfFar', field: 'shortOfFar' },
  { is: 'length', label: 'brads.bite', field: 'bite', min: 1 },
  { is: 'amount', label: 'brads.screwOver', field: 'screwOver_kg', unit: massUnit, digits: 1, min: 0.1 },
];

/** What is driven, how far apart, and how deep. */
export function FastenerFields() {
  const t = useWords();
  const say = useSay();
  const { fastening } = useSettledDesign();
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
        <Fields of={FIELDS} value={fastening} onChange={put} />
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
