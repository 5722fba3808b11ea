import { canTurn, hardwareIn } from '../../../design/hardware.ts';
import type { Fitting } from '../../../design/schema.ts';
import type { Hardware, HardwareKind } from '../../../materials/types.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { tables } from '../../shipped/tables.ts';
import { t, type WordKey } from '../../words/t.ts';
import { massUnit } from '../facts/rateUnit.ts';
import { SHAPE_FIELDS } from './shapeFields.ts';
import { usePart } from './usePart.ts';

/** The choice of hardware that the table does not have. */
const OWN = '';

const entryOf = ({ sold }: Fitting): Hardware | undefined =>
  tables().hardware.find(({ id }) => id === sold?.entry);

/** What must be said where it is chosen. */
const HINTS: Readonly<Partial<Record<HardwareKind, WordKey>>> = {
  pull: 'fitting.hint.grip',
  knob: 'fitting.hint.grip',
  lamp: 'fitting.hint.lamp',
};

const FIELDS: readonly FormField<Fitting>[] = [
  {
    is: 'choice',
    label: 'fitting.entry',
    place: 'wide',
    of: () => [{ value: OWN, label: t('fitting.own') }, ...namesOf(tables().hardware)],
    hintOf: (part) => {
      const entry = entryOf(part);
      const hint = entry && HINTS[entry.kind];
      return hint && t(hint);
    },
    get: ({ sold }) => sold?.entry ?? OWN,
    put: (id, part) => {
      const entry = tables().hardware.find((one) => one.id === id);
      return entry ? hardwareIn(entry, false, part.box) : { sold: undefined };
    },
  },
  {
    is: 'choice',
    label: 'fitting.lie',
    when: (part) => {
      const entry = entryOf(part);
      return entry !== undefined && canTurn(entry);
    },
    of: named('fitting.lie', ['across', 'up']),
    get: ({ sold }) => (sold && sold.h > sold.w ? 'up' : 'across'),
    put: (lie: 'across' | 'up', part) => {
      const entry = entryOf(part);
      return entry ? hardwareIn(entry, entry.height > entry.width === (lie === 'across'), part.box) : null;
    },
  },
  ...SHAPE_FIELDS,
  { is: 'length', label: 'fitting.depth', field: 'depth' },
  {
    is: 'amount',
    label: 'fixing.weight',
    field: 'mass_kg',
    unit: massUnit,
    digits: 3,
    max: (_, { measure }) => 200 / massUnit(measure).size,
    step: 0.1,
  },
  {
    is: 'number',
    label: 'stock.price',
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
