import type { Look } from '../../../design/look.ts';
import type { Design, Finish, Lettering } from '../../../design/schema.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';

type Layer = 'outline' | 'inline' | 'shade' | 'ribbon';
/** A look, and how high the letters are that have it. */
export type Looked = Look & Pick<Lettering, 'capHeight'>;
type LookField = FormField<Looked, Partial<Look>>;

const inFinish = {
  is: 'choice',
  field: 'finish',
  of: (_: unknown, { finishes }: Design) => namesOf(finishes),
} as const;

export const FILL_FIELDS: readonly LookField[] = [{ ...inFinish, label: 'letters.fill' }];

/** What is painted around, in and under the letters, once it is there. */
export const LAYER_FIELDS: Readonly<Record<Layer, readonly LookField[]>> = {
  outline: within<Looked, 'outline'>('outline', [
    { is: 'length', label: 'letters.outlineWidth', field: 'width', min: 0.1 },
    { ...inFinish, label: 'letters.outlineIn' },
  ]),
  inline: within<Looked, 'inline'>('inline', [
    { is: 'length', label: 'letters.inset', field: 'inset', min: 0.1 },
    { is: 'length', label: 'letters.inlineWidth', field: 'width', min: 0.1 },
    { ...inFinish, label: 'letters.inlineIn' },
  ]),
  shade: within<Looked, 'shade'>('shade', [
    {
      is: 'choice',
      label: 'letters.shadeKind',
      field: 'kind',
      of: named('letters.shade', ['drop', 'block']),
    },
    {
      is: 'number',
      label: 'letters.shadeAngle',
      hint: 'letters.shadeAngleHint',
      field: 'angle',
      unit: '°',
      min: -180,
      max: 180,
    },
    { is: 'length', label: 'rule.distance', field: 'distance', min: 0.1 },
    { ...inFinish, label: 'letters.shadeIn' },
  ]),
  ribbon: within<Looked, 'ribbon'>('ribbon', [
    { is: 'length', label: 'letters.ribbonMargin', field: 'margin' },
    { is: 'length', label: 'letters.ribbonNotch', field: 'notch' },
    { ...inFinish, label: 'letters.ribbonIn' },
  ]),
};

/** Whether a layer is painted; put on first, it has a size that shows at any cap height. */
const layerSwitch = (layer: Layer, first: (thin: number) => Partial<Look>): readonly LookField[] => [
  {
    is: 'switch',
    label: `letters.${layer}`,
    get: (look) => look[layer] !== null && look[layer] !== undefined,
    put: (on, { capHeight }) =>
      on
        ? first(Math.max(1, Math.round(capHeight / 25)))
        : { [layer]: layer === 'ribbon' ? undefined : null },
  },
];

/** The switches of the layers, of letters in one finish on a board of another, or on bare wood. */
export function layerFields(
  finishes: readonly Finish[],
  own: string,
  board: string | null,
): Readonly<Record<Layer, readonly LookField[]>> {
  // What is put on first has another color than the letters and, where there is one, than the board, on which it
  // would not be seen.
  const others = finishes.filter((f) => f.id !== own);
  const finish = (others.find((f) => f.id !== board) ?? others[0])?.id ?? own;
  return {
    outline: layerSwitch('outline', (width) => ({ outline: { width, finish } })),
    inline: layerSwitch('inline', (thin) => ({ inline: { inset: thin, width: thin, finish } })),
    shade: layerSwitch('shade', (thin) => ({
      shade: { kind: 'drop', angle: -45, distance: thin * 2, finish },
    })),
    ribbon: layerSwitch('ribbon', (thin) => ({ ribbon: { margin: thin * 8, notch: thin * 12, finish } })),
  };
}
