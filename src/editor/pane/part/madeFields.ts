import { segmentRadius } from '../../../geometry/curve.ts';
import { riseOf } from '../../../geometry/drawn.ts';
import { distance } from '../../../geometry/point.ts';
import type { Mm } from '../../../measure/units.ts';
import type { FormField } from '../../control/form/formField.ts';
import type { Corner, Corners } from '../../edit/corners.ts';

/** How a corner is worked and the side after it runs, with the straight way to the next corner. */
interface Made extends Pick<Corner, 'side' | 'cut'> {
  readonly chord: Mm;
  /** Which end of an open path it is: there nothing is taken off, and no side comes after the last one. */
  readonly ends: 'first' | 'last' | null;
}
type Change = Pick<Corner, 'side' | 'cut'>;
type As = NonNullable<Corner['side']>['as'] | 'straight';
type How = NonNullable<Corner['cut']>['how'] | 'plain';

export function madeOf({ points, closed }: Corners, index: number): Made {
  const [at, next] = [points[index], points[(index + 1) % points.length]];
  const ends = closed ? null : index === 0 ? 'first' : index === points.length - 1 ? 'last' : null;
  return { side: at?.side, cut: at?.cut, chord: at && next ? distance(at, next) : 0, ends };
}

/** A bow begins as one of an eighth of the way, a corner as one of this size, where nothing is there yet. */
const FIRST_BOW = 1 / 8;
const FIRST_CUT: Mm = 25.4;

/** The side as another kind that runs as far out, where it is bowed already. */
function sideAs(as: As, { side, chord }: Made): Corner['side'] {
  if (as === 'straight') return undefined;
  if (as === 'smooth') return { as };
  const rise = (side && riseOf(side, chord)) || chord * FIRST_BOW;
  return as === 'rise' ? { as, rise } : { as, radius: segmentRadius(chord, rise) };
}

/** How far a bowed side runs out, or its radius; below 0 it is bowed inward. */
const bowField = (as: 'rise' | 'radius', min: Mm): FormField<Made, Change> => ({
  is: 'length',
  label: `corners.${as}`,
  hint: 'corners.inward',
  min,
  when: ({ side, ends }) => side?.as === as && ends !== 'last',
  get: ({ side }) => Number(side?.as === as && side[as as keyof typeof side]),
  put: (mm, made) => ({ ...worked(made), side: { as, [as]: mm } as Corner['side'] }),
});

/** Of one corner of a drawn outline or path and the side after it. */
export const MADE_FIELDS: readonly FormField<Made, Change>[] = [
  {
    is: 'choice',
    label: 'corners.side',
    when: ({ ends }) => ends !== 'last',
    of: [
      { value: 'straight', words: 'corners.straight' },
      { value: 'rise', words: 'corners.byRise' },
      { value: 'radius', words: 'corners.byRadius' },
      { value: 'smooth', words: 'corners.smooth' },
    ],
    get: ({ side }) => side?.as ?? 'straight',
    put: (as: As, made) => ({ ...worked(made), side: sideAs(as, made) }),
  },
  bowField('rise', -10_000),
  bowField('radius', -20_000),
  {
    is: 'choice',
    label: 'corners.cut',
    when: ({ ends }) => ends === null,
    of: [
      { value: 'plain', words: 'corners.plain' },
      { value: 'rounded', words: 'shape.rounded' },
      { value: 'coved', words: 'shape.coved' },
      { value: 'clipped', words: 'shape.clipped' },
      { value: 'stepped', words: 'shape.stepped' },
    ],
    get: ({ cut }) => cut?.how ?? 'plain',
    put: (how: How, { side, cut }) => ({
      side,
      cut: how === 'plain' ? undefined : { how, size: cut?.size ?? FIRST_CUT },
    }),
  },
  {
    is: 'length',
    label: 'size.size',
    min: 1,
    when: ({ cut, ends }) => cut !== undefined && ends === null,
    get: ({ cut }) => cut?.size ?? 0,
    put: (size, { side, cut }) => (cut ? { side, cut: { ...cut, size } } : null),
  },
];

/** Of a corner what it is worked to. */
const worked = ({ cut }: Made): Pick<Change, 'cut'> => ({ cut });
