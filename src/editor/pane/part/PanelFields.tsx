import { Trash2 } from 'lucide-react';
import type { Panel, Sign } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { freeName } from '../../edit/ids.ts';
import { useWords } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { SHAPE_FIELDS, type Shaped } from './shapeFields.ts';
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

type Opening = Panel['openings'][number];

const OPENING_FIELDS: readonly FormField<Opening & Shaped, Partial<Opening>>[] = [
  ...SHAPE_FIELDS,
  ...within<Opening, 'margin'>('margin', [
    { is: 'length', label: 'margin.left', field: 'left' },
    { is: 'length', label: 'margin.right', field: 'right' },
    { is: 'length', label: 'margin.bottom', field: 'bottom' },
    { is: 'length', label: 'margin.top', field: 'top' },
  ]),
];

export function PanelFields({ part }: { part: Panel | Sign }) {
  const t = useWords();
  const { box, laid, change } = usePart(part);
  const addOpening = () => {
    const id = freeName(
      part.openings.map((o) => o.id),
      'opening',
    ).replace(' ', '-');
    const margin = { left: box.w / 4, right: box.w / 4, bottom: box.h / 4, top: box.h / 4 };
    change({ openings: [...part.openings, { id, shape: { form: 'rectangle' }, margin }] });
  };
  return (
    <>
      <div className="fields">
        <Fields of={BOARD_FIELDS} value={laid} onChange={change} />
      </div>
      {part.openings.map((opening, i) => {
        const { left, right, bottom, top } = opening.margin;
        const hole = { ...opening, box: { w: box.w - left - right, h: box.h - bottom - top } };
        const take = (fields: Partial<Opening>) =>
          change({ openings: part.openings.map((o) => (o.id === opening.id ? { ...o, ...fields } : o)) });
        return (
          <fieldset key={opening.id} className="sub">
            <legend>
              {t('panel.opening', { number: i + 1 })}
              <button
                type="button"
                className="btn bare icon"
                aria-label={t('panel.removeOpening', { number: i + 1 })}
                onClick={() => change({ openings: part.openings.filter((o) => o.id !== opening.id) })}
              >
                <Trash2 aria-hidden="true" />
              </button>
            </legend>
            <div className="fields">
              <Fields of={OPENING_FIELDS} value={hole} onChange={take} />
            </div>
          </fieldset>
        );
      })}
      <button type="button" className="btn" onClick={addOpening}>
        {t('panel.addOpening')}
      </button>
    </>
  );
}
