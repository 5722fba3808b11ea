import type { Bed } from '../../../design/schema.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import type { MainMeasures } from '../../edit/fitBed.ts';
import { tables } from '../../shipped/tables.ts';
import { t, type WordKey } from '../../words/t.ts';

/** Of the table and as it was measured, a mattress is the same within this, millimeters. */
const SAME_SIZE = 0.5;
/** No mattress of the table, no way of its own. */
const OWN = 'own';

type Sleeping = Pick<Bed, 'mattress'>;

/** The mattress of the table that is as large. */
export const presetOf = ({ width, length }: Bed['mattress']) =>
  tables().mattresses.find(
    (m) => Math.abs(m.width - width) < SAME_SIZE && Math.abs(m.length - length) < SAME_SIZE,
  );

/** A mattress of the table, which gives width and length; `own` is what another is called. */
const presetField = (own: WordKey) =>
  ({
    is: 'choice',
    label: 'bed.preset',
    of: () => [{ value: OWN, label: t(own) }, ...namesOf(tables().mattresses)],
    get: ({ mattress }: Sleeping) => presetOf(mattress)?.id ?? OWN,
    put: (id: string, { mattress }: Sleeping) => {
      const preset = tables().mattresses.find((m) => m.id === id);
      return preset ? { mattress: { ...mattress, width: preset.width, length: preset.length } } : null;
    },
  }) as const;

const ALONG = named('bed.along', ['end', 'side']);

/** A mattress of the table, and along which side the bed folds. */
export const MATTRESS_FIELDS: readonly FormField<Bed, Partial<Pick<Bed, 'mattress' | 'pivotAlong'>>>[] = [
  { ...presetField('bed.ownSize'), place: 'wide' },
  { is: 'choice', label: 'bed.pivotAlong', field: 'pivotAlong', of: ALONG, place: 'wide' },
];

/** The measures that are asked before a face is chosen. */
export const FIRST_FIELDS: readonly FormField<MainMeasures>[] = [
  presetField('first.ownSize'),
  ...within<MainMeasures, 'mattress'>('mattress', [
    { is: 'length', label: 'bed.mattressWidth', field: 'width', min: 100, max: 5000 },
    { is: 'length', label: 'bed.mattressLength', field: 'length', min: 100, max: 5000 },
    { is: 'length', label: 'bed.mattressThickness', field: 'thickness', min: 1, max: 5000 },
  ]),
  {
    is: 'choice',
    label: 'bed.pivotAlong',
    of: () => [
      { value: OWN, label: t('first.ownWay') },
      ...ALONG.map((one) => ({ value: one.value, label: t(one.words) })),
    ],
    get: ({ pivotAlong }) => pivotAlong ?? OWN,
    put: (way: 'end' | 'side' | typeof OWN) => ({ pivotAlong: way === OWN ? null : way }),
  },
];

/** In what lengths are told. */
export const UNIT_FIELDS: readonly FormField<MainMeasures['measure']>[] = [
  {
    is: 'choice',
    label: 'settings.unit',
    of: named('unit', ['in', 'mm']),
    get: ({ unit }) => (unit === 'mm' || unit === 'cm' ? 'mm' : 'in'),
    put: (unit: 'in' | 'mm') => ({ unit }),
  },
];
