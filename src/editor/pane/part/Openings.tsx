import { useContext } from 'react';
import type { Part } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, within } from '../../control/form/formField.ts';
import { Remove } from '../../control/Remove.tsx';
import { cornersOf, openingThrough } from '../../edit/corners.ts';
import { newOpening, type Opening, openingIn } from '../../edit/openings.ts';
import { useEditor, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { OutlineFields } from './CornerFields.tsx';
import { MemberContext } from './memberContext.ts';
import { SHAPE_FIELDS, type Shaped } from './shapeFields.ts';

const OPENING_FIELDS: readonly FormField<Opening & Shaped, Partial<Opening>>[] = [
  ...SHAPE_FIELDS,
  ...within<Opening, 'margin'>('margin', [
    { is: 'length', label: 'margin.left', field: 'left' },
    { is: 'length', label: 'margin.right', field: 'right' },
    { is: 'length', label: 'margin.bottom', field: 'bottom' },
    { is: 'length', label: 'margin.top', field: 'top' },
  ]),
];

/** The openings of a board or fill, each with its handles on the drawing while it is chosen, and buttons for one more. */
export function Openings({
  part,
  of,
  box,
  onChange,
}: {
  readonly part: Part;
  readonly of: readonly Opening[];
  readonly box: Box;
  readonly onChange: (openings: readonly Opening[]) => void;
}) {
  const t = useWords();
  const store = useStore();
  // What repeats has no place of its own on the drawing.
  const onDrawing = useContext(MemberContext) === null && !part.locked;
  const drawing = useEditor((s) => s.tool === 'opening');
  const addOpening = () => {
    const margin = { left: box.w / 4, right: box.w / 4, bottom: box.h / 4, top: box.h / 4 };
    onChange([...of, newOpening(of, margin)]);
  };
  return (
    <>
      {of.map((opening) => {
        const found = openingIn({ ...part, openings: of } as Part, box, opening.id);
        const number = of.indexOf(opening) + 1;
        const hole = found?.hole ?? { ...box, w: 0, h: 0 };
        const corners = found && cornersOf(opening, hole);
        const take = (fields: Partial<Opening>) =>
          onChange(of.map((o) => (o.id === opening.id ? { ...o, ...fields } : o)));
        const choose = () => {
          if (onDrawing && store.getState().opening !== opening.id)
            store.setState({ opening: opening.id, corner: null });
        };
        return (
          <fieldset key={opening.id} className="sub" onFocus={choose}>
            <legend>
              {t('panel.opening', { number })}
              <Remove
                label={t('panel.removeOpening', { number })}
                onClick={() => onChange(of.filter((o) => o.id !== opening.id))}
              />
            </legend>
            <FieldGrid of={OPENING_FIELDS} value={{ ...opening, box: hole }} onChange={take} />
            {corners ? (
              <OutlineFields
                corners={corners}
                box={hole}
                name={found.name}
                opening={opening.id}
                onTake={(next) => take(openingThrough(opening, box, next))}
              />
            ) : null}
          </fieldset>
        );
      })}
      <div className="btn-row">
        <Button onClick={addOpening}>{t('panel.addOpening')}</Button>
        {onDrawing ? (
          <Button
            aria-pressed={drawing}
            onClick={() => store.setState({ tool: drawing ? 'select' : 'opening' })}
          >
            {t('opening.draw')}
          </Button>
        ) : null}
      </div>
    </>
  );
}
