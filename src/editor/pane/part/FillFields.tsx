import type { Fill } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { stockChoices } from '../facts/choices.ts';
import { SHAPE_FIELDS } from './shapeFields.ts';
import { usePart } from './usePart.ts';

const FILL_FIELDS: readonly FormField<Fill>[] = [
  {
    is: 'choice',
    label: 'part.stock',
    field: 'stock',
    place: 'wide',
    of: ({ stock }, design) => stockChoices(design, ['flat'], stock),
  },
  ...SHAPE_FIELDS,
  ...within<Fill, 'pattern'>('pattern', [
    { is: 'choice', label: 'fill.edge', field: 'edge', of: named('edge', ['square', 'lapped', 'tongued']) },
    { is: 'length', label: 'fill.lap', field: 'lap', when: ({ edge }) => edge !== 'square' },
  ]),
  { is: 'length', label: 'fill.gap', field: 'gap' },
  { is: 'number', label: 'fill.angle', field: 'angle', unit: '°', min: -180, max: 180 },
  {
    is: 'choice',
    label: 'fill.start',
    field: 'start',
    of: named('start', ['balanced', 'piece', 'gap', 'low', 'high']),
  },
];

/** What a fill is sawn from, the shape it takes up, and how its pieces are set out. */
export function FillFields({ part }: { part: Fill }) {
  const { laid, change } = usePart(part);
  return (
    <div className="fields">
      <Fields of={FILL_FIELDS} value={laid} onChange={change} />
    </div>
  );
}
