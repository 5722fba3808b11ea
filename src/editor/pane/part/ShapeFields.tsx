import type { PanelShape } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { useWords } from '../../words/t.ts';

const FORMS = ['rectangle', 'arched', 'round', 'polygon'] as const;
/** A polygon begins as the outline of a house: it is plain at once that its corners can be told. */
const HOUSE = [
  { u: 0, v: 0 },
  { u: 1, v: 0 },
  { u: 1, v: 0.7 },
  { u: 0.5, v: 1 },
  { u: 0, v: 0.7 },
];

interface ShapeFieldsProps {
  readonly shape: PanelShape;
  readonly box: Pick<Box, 'w' | 'h'>;
  readonly onCommit: (shape: PanelShape) => void;
}

/** The outline of a panel, fitting or painted shape within its box. */
export function ShapeFields({ shape, box, onCommit }: ShapeFieldsProps) {
  const t = useWords();
  return (
    <>
      <ChoiceField
        label={t('shape.form')}
        value={shape.form}
        choices={FORMS.map((value) => ({ value, label: t(`shape.${value}`) }))}
        onCommit={(form) => {
          if (form === 'arched') onCommit({ form, rise: Math.max(1, Math.min(box.w / 2, box.h) / 2) });
          else if (form === 'polygon') onCommit({ form, points: HOUSE });
          else onCommit({ form });
        }}
      />
      {shape.form === 'arched' ? (
        <MeasureField
          label={t('shape.rise')}
          min={1}
          value={shape.rise}
          onCommit={(rise) => onCommit({ form: 'arched', rise })}
        />
      ) : null}
    </>
  );
}
