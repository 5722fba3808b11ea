import type { PanelShape } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { FAMILIES, isNamed, type Measure, OUTLINES, outlineOf } from '../../../layout/place/outlines.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { useWords, type WordKey } from '../../words/t.ts';

type Form = PanelShape['form'];

/** The plain ones first, then the others by what they are. */
const FORMS: readonly { readonly value: Form; readonly family: (typeof FAMILIES)[number] }[] = [
  { value: 'rectangle', family: 'board' },
  { value: 'polygon', family: 'board' },
  ...FAMILIES.flatMap((family) =>
    Object.keys(OUTLINES)
      .map((form) => form as keyof typeof OUTLINES)
      .filter((form) => OUTLINES[form].family === family)
      .map((value) => ({ value, family })),
  ),
];

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

function firstOf(form: Form, box: Pick<Box, 'w' | 'h'>): PanelShape {
  if (form === 'rectangle') return { form };
  return form === 'polygon' ? { form, points: HOUSE } : outlineOf(form).first(box);
}

/** The outline of a panel, fitting or painted shape within its box, and the measures that it asks for. */
export function ShapeFields({ shape, box, onCommit }: ShapeFieldsProps) {
  const t = useWords();
  const named = isNamed(shape) ? shape : null;
  const take = (changed: Record<string, unknown>) => onCommit({ ...shape, ...changed } as PanelShape);
  const { toward, ...up } = { toward: undefined, ...shape };
  return (
    <>
      <ChoiceField
        label={t('shape.form')}
        value={shape.form}
        choices={FORMS.map(({ value, family }) => ({
          value,
          label: t(`shape.${value}`),
          group: t(`shape.family.${family}`),
        }))}
        onCommit={(form) => onCommit(firstOf(form, box))}
      />
      {named
        ? Object.entries<Measure>(outlineOf(named.form).measures).map(([name, measure]) => (
            <AskedField
              key={name}
              label={t(`shape.${name}` as WordKey)}
              measure={measure}
              value={(named as unknown as Record<string, number | string>)[name] ?? 0}
              onCommit={(value) => take({ [name]: value })}
            />
          ))
        : null}
      {named && outlineOf(named.form).looks ? (
        <ChoiceField
          label={t('shape.toward')}
          value={toward ?? 'up'}
          choices={(['up', 'down'] as const).map((value) => ({ value, label: t(`shape.${value}`) }))}
          onCommit={(way) => onCommit((way === 'up' ? up : { ...up, toward: way }) as PanelShape)}
        />
      ) : null}
    </>
  );
}

interface AskedFieldProps {
  readonly label: string;
  readonly measure: Measure;
  readonly value: number | string;
  readonly onCommit: (value: number | string) => void;
}

/** One measure of a named outline. */
function AskedField({ label, measure, value, onCommit }: AskedFieldProps) {
  const t = useWords();
  switch (measure.kind) {
    case 'length':
      return <MeasureField label={label} min={1} value={Number(value)} onCommit={onCommit} />;
    case 'count':
      return (
        <NumberField
          label={label}
          whole
          min={measure.min}
          max={measure.max}
          value={Number(value)}
          onCommit={onCommit}
        />
      );
    case 'share':
      return (
        <NumberField
          label={label}
          unit="%"
          min={100 * measure.min}
          max={100 * measure.max}
          value={100 * Number(value)}
          onCommit={(share) => onCommit(share / 100)}
        />
      );
    case 'choice':
      return (
        <ChoiceField
          label={label}
          value={String(value)}
          choices={measure.among.map((each) => ({ value: each, label: t(`shape.${each}` as WordKey) }))}
          onCommit={onCommit}
        />
      );
  }
}
