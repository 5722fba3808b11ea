import type { Shop } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, within } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';

const FIELDS: readonly FormField<Shop>[] = [
  { is: 'length', label: 'shopset.boardKerf', field: 'boardKerf' },
  { is: 'length', label: 'shopset.sheetKerf', field: 'sheetKerf' },
  { is: 'length', label: 'shopset.endTrim', field: 'endTrim' },
  { is: 'length', label: 'shopset.edgeTrim', field: 'edgeTrim' },
  { is: 'length', label: 'shopset.fitAllowance', field: 'fitAllowance' },
  { is: 'length', label: 'shopset.keepOffcut', field: 'keepOffcut' },
  ...within<Shop, 'saw'>('saw', [
    { is: 'number', label: 'shopset.miter', field: 'miter', unit: '°', max: 75 },
    { is: 'number', label: 'shopset.bevel', field: 'bevel', unit: '°', max: 60 },
  ]),
];

/** What the saw takes and can do, and what is worth keeping. */
export function SawFields() {
  const t = useWords();
  const { shop } = useSettledDesign();
  const { set } = useChange();
  const put = (fields: Partial<Shop>) => set('shop', { ...shop, ...fields }, t('shopset.title'));
  return (
    <Section id="wood-saw" title="shopset.title">
      <FieldGrid of={FIELDS} value={shop} onChange={put} />
    </Section>
  );
}
