import type { KeepClear } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { useChange } from '../facts/useChange.ts';

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
  const { replace } = useChange();
  const change = (fields: Partial<KeepClear>) => replace('keepClears', { ...keep, ...fields }, keep.name);
  return <FieldGrid of={FIELDS} value={keep} onChange={change} />;
}
