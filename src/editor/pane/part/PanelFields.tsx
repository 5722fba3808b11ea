import type { Panel, Sign } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { stockChoices } from '../facts/choices.ts';
import { Openings } from './Openings.tsx';
import { SHAPE_FIELDS } from './shapeFields.ts';
import { usePart } from './usePart.ts';

const BOARD_FIELDS: readonly FormField<Pick<Panel, 'stock' | 'shape' | 'box' | 'grain'>>[] = [
  {
    is: 'choice',
    label: 'part.stock',
    field: 'stock',
    place: 'wide',
    of: ({ stock }, design) => stockChoices(design, ['sheet'], stock),
  },
  ...SHAPE_FIELDS,
  { is: 'choice', label: 'panel.grain', field: 'grain', of: named('grain', ['any', 'up', 'across']) },
];

export function PanelFields({ part }: { part: Panel | Sign }) {
  const { box, laid, change } = usePart(part);
  return (
    <>
      <FieldGrid of={BOARD_FIELDS} value={laid} onChange={change} />
      <Openings part={part} of={part.openings} box={box} onChange={(openings) => change({ openings })} />
    </>
  );
}
