import type { FormField } from '../../control/form/formField.ts';
import type { Photo, Placing } from '../../state/photo.ts';

/** How a photo shows. */
export const PHOTO_FIELDS: readonly FormField<Photo>[] = [
  { is: 'switch', label: 'photo.shown', field: 'shown' },
  { is: 'switch', label: 'photo.locked', field: 'locked' },
  { is: 'share', label: 'photo.opacity', field: 'opacity', min: 5, max: 100, step: 5, place: 'wide' },
];

type PlacingField = FormField<Photo, Partial<Placing>>;

const atField = (label: 'part.left' | 'part.bottom', axis: 'x' | 'y'): PlacingField => ({
  is: 'length',
  label,
  min: -20_000,
  get: ({ placing }) => placing.at[axis],
  put: (mm, { placing }) => ({ at: { ...placing.at, [axis]: mm } }),
});

/** Where it lies and how wide it is. */
export const PLACING_FIELDS: readonly PlacingField[] = [
  atField('part.left', 'x'),
  atField('part.bottom', 'y'),
  {
    is: 'length',
    label: 'size.width',
    min: 10,
    get: ({ image, placing }) => image.width * placing.scale,
    put: (width, { image }) => ({ scale: width / image.width }),
  },
];

/** Shown as seen squarely from the front. */
export const STRAIGHT_FIELDS: readonly PlacingField[] = [
  {
    is: 'switch',
    label: 'photo.straight',
    hint: 'photo.straightHint',
    off: ({ locked }) => locked,
    get: ({ placing }) => placing.straight,
    put: (straight) => ({ straight }),
  },
];
