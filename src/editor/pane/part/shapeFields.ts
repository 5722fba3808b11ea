import type { PanelShape } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { freed } from '../../../layout/place/drawn.ts';
import {
  FAMILIES,
  lookOf,
  type Measure,
  type NamedShape,
  OUTLINES,
  outlineOf,
  upsideDown,
} from '../../../layout/place/outlines.ts';
import type { FormField } from '../../control/form/formField.ts';
import { t, type WordKey } from '../../words/t.ts';

/** Of what has no one border to draw on from, the outline of a house: it is plain that its corners can be told. */
const HOUSE = [
  { u: 0, v: 0 },
  { u: 1, v: 0 },
  { u: 1, v: 0.7 },
  { u: 0.5, v: 1 },
  { u: 0, v: 0.7 },
];

/** What has an outline within its box. */
export interface Shaped {
  readonly shape: PanelShape;
  readonly box: Pick<Box, 'w' | 'h'>;
}

type Form = PanelShape['form'];
type ShapeField = FormField<Shaped, { shape: PanelShape }>;

export const NAMED = Object.keys(OUTLINES) as NamedShape['form'][];

/** The plain ones first, then the others by what they are. */
const FORMS: readonly { readonly value: Form; readonly family: (typeof FAMILIES)[number] }[] = [
  { value: 'rectangle', family: 'board' },
  { value: 'polygon', family: 'board' },
  ...FAMILIES.flatMap((family) =>
    NAMED.filter((form) => outlineOf(form).family === family).map((value) => ({ value, family })),
  ),
];

function firstOf(form: Form, box: Shaped['box']): PanelShape {
  if (form === 'rectangle') return { form };
  return form === 'polygon' ? { form, points: HOUSE } : outlineOf(form).first(box);
}

/** The outline that it has, with corners to be moved. */
export const freedOf = (shape: PanelShape, { w, h }: Shaped['box']): PanelShape | null =>
  shape.form === 'polygon' ? shape : freed(shape, { x: 0, y: 0, w, h });

/** One measure of a named outline, asked for while the shape is that outline. */
function asked(form: NamedShape['form'], name: string, measure: Measure): ShapeField {
  const label = `shape.${name}` as WordKey;
  const when = ({ shape }: Shaped) => shape.form === form;
  const held = ({ shape }: Shaped) => (shape as Readonly<Record<string, unknown>>)[name] as never;
  const put = (next: number | string, { shape }: Shaped) => ({
    shape: { ...shape, [name]: next } as PanelShape,
  });
  switch (measure.kind) {
    case 'length':
      return { is: 'length', label, when, min: 1, get: held, put };
    case 'count':
      return { is: 'number', label, when, whole: true, min: measure.min, max: measure.max, get: held, put };
    case 'share':
      return { is: 'share', label, when, min: 100 * measure.min, max: 100 * measure.max, get: held, put };
    case 'choice':
      return {
        is: 'choice',
        label,
        when,
        of: measure.among.map((value) => ({ value, words: `shape.${value}` as WordKey })),
        get: held,
        put,
      };
  }
}

/** The measures that a ready outline asks for. */
export const MEASURE_FIELDS: readonly ShapeField[] = [
  ...NAMED.flatMap((form) =>
    Object.entries(outlineOf(form).measures).map(([name, measure]) => asked(form, name, measure)),
  ),
  {
    is: 'choice',
    label: 'shape.toward',
    when: ({ shape }) => lookOf(shape) !== null,
    of: [
      { value: 'up', words: 'shape.up' },
      { value: 'down', words: 'shape.down' },
    ],
    get: ({ shape }) => lookOf(shape) ?? 'up',
    put: (way, { shape }) => ({ shape: lookOf(shape) === way ? shape : upsideDown(shape) }),
  },
];

/** The outline of a panel, opening, fitting or painted shape, and the measures that it asks for. */
export const SHAPE_FIELDS: readonly ShapeField[] = [
  {
    is: 'choice',
    label: 'shape.form',
    of: () =>
      FORMS.map(({ value, family }) => ({
        value,
        label: t(`shape.${value}`),
        group: t(`shape.family.${family}`),
      })),
    get: ({ shape }) => shape.form,
    put: (form: Form, { shape, box }) => ({
      shape: (form === 'polygon' && freedOf(shape, box)) || firstOf(form, box),
    }),
  },
  ...MEASURE_FIELDS,
];
