import { Trash2 } from 'lucide-react';
import type { Panel } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, within } from '../../control/form/formField.ts';
import { freeName } from '../../edit/ids.ts';
import { useWords } from '../../words/t.ts';
import { SHAPE_FIELDS, type Shaped } from './shapeFields.ts';

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

/** The openings of a board or fill, and a button for one more. */
export function Openings({
  of,
  box,
  onChange,
}: {
  readonly of: readonly Opening[];
  readonly box: Pick<Box, 'w' | 'h'>;
  readonly onChange: (openings: readonly Opening[]) => void;
}) {
  const t = useWords();
  const addOpening = () => {
    const id = freeName(
      of.map((o) => o.id),
      'opening',
    ).replace(' ', '-');
    const margin = { left: box.w / 4, right: box.w / 4, bottom: box.h / 4, top: box.h / 4 };
    onChange([...of, { id, shape: { form: 'rectangle' }, margin }]);
  };
  return (
    <>
      {of.map((opening, i) => {
        const { left, right, bottom, top } = opening.margin;
        const hole = { ...opening, box: { w: box.w - left - right, h: box.h - bottom - top } };
        const take = (fields: Partial<Opening>) =>
          onChange(of.map((o) => (o.id === opening.id ? { ...o, ...fields } : o)));
        return (
          <fieldset key={opening.id} className="sub">
            <legend>
              {t('panel.opening', { number: i + 1 })}
              <Button
                icon={Trash2}
                look="bare icon"
                label={t('panel.removeOpening', { number: i + 1 })}
                onClick={() => onChange(of.filter((o) => o.id !== opening.id))}
              />
            </legend>
            <FieldGrid of={OPENING_FIELDS} value={hole} onChange={take} />
          </fieldset>
        );
      })}
      <Button onClick={addOpening}>{t('panel.addOpening')}</Button>
    </>
  );
}
