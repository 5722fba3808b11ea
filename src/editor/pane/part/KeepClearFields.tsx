import { replacing } from '../../../design/edit/make.ts';
import type { KeepClear } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { useCommit } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

const FIELDS: readonly FormField<KeepClear>[] = [
  { is: 'text', label: 'part.name', field: 'name', place: 'wide' },
  {
    is: 'choice',
    label: 'keep.why',
    field: 'why',
    of: named('why', ['hinge', 'leg', 'latch', 'handle', 'other']),
  },
  { is: 'length', label: 'fitting.depth', field: 'height', hint: 'keep.heightHint' },
  ...within<KeepClear, 'box'>('box', [
    { is: 'length', label: 'part.left', field: 'x', min: -10_000 },
    { is: 'length', label: 'part.bottom', field: 'y', min: -10_000 },
    { is: 'length', label: 'size.width', field: 'w', min: 1 },
    { is: 'length', label: 'part.height', field: 'h', min: 1 },
  ]),
];

export function KeepClearFields({ keep }: { keep: KeepClear }) {
  const t = useWords();
  const commit = useCommit();
  const change = (fields: Partial<KeepClear>) =>
    commit([replacing('keepClears', { ...keep, ...fields })], t('did.change', { name: keep.name }));
  return <FieldGrid of={FIELDS} value={keep} onChange={change} />;
}
