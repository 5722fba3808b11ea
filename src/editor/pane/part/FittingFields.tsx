import type { Fitting } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { massUnit } from '../facts/rateUnit.ts';
import { SHAPE_FIELDS } from './shapeFields.ts';
import { usePart } from './usePart.ts';

const FIELDS: readonly FormField<Fitting>[] = [
  ...SHAPE_FIELDS,
  { is: 'length', label: 'fitting.depth', field: 'depth' },
  {
    is: 'amount',
    label: 'fitting.mass',
    field: 'mass_kg',
    unit: massUnit,
    digits: 3,
    max: (_, { measure }) => 200 / massUnit(measure).size,
    step: 0.1,
  },
  {
    is: 'number',
    label: 'fitting.price',
    field: 'price',
    unit: (_, { measure }) => measure.currency,
    step: 0.5,
  },
  { is: 'color', label: 'fitting.color', field: 'color' },
];

export function FittingFields({ part }: { part: Fitting }) {
  const { laid, change } = usePart(part);
  return <FieldGrid of={FIELDS} value={laid} onChange={change} />;
}
