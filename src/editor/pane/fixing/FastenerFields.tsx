import type { Design } from '../../../design/schema.ts';
import type { Mm } from '../../../measure/units.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { useSay } from '../../control/useSay.ts';
import { tables } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { massUnit } from '../facts/rateUnit.ts';
import { useChange } from '../facts/useChange.ts';

const FIELDS: readonly FormField<Design['fastening']>[] = [
  {
    is: 'choice',
    label: 'fixing.brads',
    of: () => namesOf(tables().brads),
    get: ({ brad }) => brad,
    // Lengths at hand are those of one kind of brad.
    put: (brad) => ({ brad, lengths: [] }),
  },
  {
    is: 'choice',
    label: 'fixing.screws',
    field: 'screw',
    of: () => namesOf(tables().screws.filter(({ thread }) => thread === 'wood')),
  },
  { is: 'length', label: 'brads.spacing', field: 'spacing', min: 1 },
  { is: 'length', label: 'brads.fromEdge', field: 'fromEdge' },
  { is: 'length', label: 'brads.shortOfFar', field: 'shortOfFar' },
  { is: 'length', label: 'brads.bite', field: 'bite', min: 1 },
  { is: 'amount', label: 'brads.screwOver', field: 'screwOver_kg', unit: massUnit, digits: 1, min: 0.1 },
];

/** Whether brads of a length are on hand. */
const lengthField = (mm: Mm, name: string): FormField<Design['fastening']> => {
  const others = (lengths: readonly Mm[]) => lengths.filter((l) => Math.abs(l - mm) >= 0.01);
  return {
    is: 'switch',
    label: { name },
    get: ({ lengths }) => others(lengths).length < lengths.length,
    put: (on, { lengths }) => ({
      lengths: on ? [...lengths, mm].sort((a, b) => a - b) : others(lengths),
    }),
  };
};

/** What is driven, how far apart, and how deep. */
export function FastenerFields() {
  const t = useWords();
  const say = useSay();
  const { fastening } = useSettledDesign();
  const { set } = useChange();
  const put = (fields: Partial<Design['fastening']>) =>
    set('fastening', { ...fastening, ...fields }, t('brads.settings'));
  const brad = tables().brads.find((b) => b.id === fastening.brad);
  const lengths = (brad?.lengths ?? []).map((mm) => lengthField(mm, say.short(mm)));
  return (
    <Section id="brads-settings" title="brads.settings">
      <FieldGrid of={FIELDS} value={fastening} onChange={put} />
      <details className="more">
        <summary>{t('brads.lengths')}</summary>
        <p className="note">{t('brads.lengthsHint')}</p>
        <div className="length-ticks">
          <Fields of={lengths} value={fastening} onChange={put} />
        </div>
      </details>
    </Section>
  );
}
