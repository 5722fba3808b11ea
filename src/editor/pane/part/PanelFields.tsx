import { Trash2 } from 'lucide-react';
import type { Panel, Sign } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { freeName } from '../../edit/ids.ts';
import { useDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { ShapeFields } from './ShapeFields.tsx';
import { usePart } from './usePart.ts';

const SIDES = ['left', 'right', 'bottom', 'top'] as const;

export function PanelFields({ part }: { part: Panel | Sign }) {
  const t = useWords();
  const design = useDesign();
  const { box, change } = usePart(part);
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
        <div className="wide">
          <ChoiceField
            label={t('part.stock')}
            value={part.stock}
            choices={stockChoices(design, ['sheet'], part.stock)}
            onCommit={(stock) => change({ stock })}
          />
        </div>
        <ShapeFields shape={part.shape} box={box} onCommit={(shape) => change({ shape })} />
        <ChoiceField
          label={t('panel.grain')}
          value={part.grain}
          choices={(['any', 'up', 'across'] as const).map((value) => ({ value, label: t(`grain.${value}`) }))}
          onCommit={(grain) => change({ grain })}
        />
      </div>
      {part.openings.map((opening, i) => {
        const take = (next: typeof opening) =>
          change({ openings: part.openings.map((o) => (o.id === opening.id ? next : o)) });
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
              <ShapeFields
                shape={opening.shape}
                box={{
                  w: box.w - opening.margin.left - opening.margin.right,
                  h: box.h - opening.margin.top - opening.margin.bottom,
                }}
                onCommit={(shape) => take({ ...opening, shape })}
              />
              {SIDES.map((side) => (
                <MeasureField
                  key={side}
                  label={t(`margin.${side}`)}
                  value={opening.margin[side]}
                  onCommit={(mm) => take({ ...opening, margin: { ...opening.margin, [side]: mm } })}
                />
              ))}
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
