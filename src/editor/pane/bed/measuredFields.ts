import type { BedMeasured } from '../../../bed/bed.ts';
import { EDGES, type EdgeName, outAt, type Place } from '../../../bed/bows.ts';
import type { RealEdges } from '../../../bed/face.ts';
import { cornersOf, READINGS, type Reading, spanOf } from '../../../bed/measured.ts';
import { FARTHEST_BOW } from '../../../design/limits.ts';
import type { Bed } from '../../../design/schema.ts';
import { ringOfBox } from '../../../geometry/region.ts';
import type { Box } from '../../../geometry/shape.ts';
import type { Mm } from '../../../measure/units.ts';
import { type FormField, named } from '../../control/form/formField.ts';
import type { Shown } from '../../document/shown.ts';

/** What a bed is before anything of it was measured. */
export const UNMEASURED: BedMeasured = { rim: {}, field: {}, keep: 'bottom', rise: 0, border: 'square' };

type Of = RealEdges['of'];

const asked = ({ design }: Shown): BedMeasured => design.bed.measured ?? UNMEASURED;

const isMeasured = ({ design }: Shown): boolean => design.bed.measured !== undefined;

/** The true rectangle that readings are of; none on a face without a recess. */
const meant = ({ face }: Shown, of: Of): Box | null =>
  of === 'rim' ? face.box : (face.levels.find(({ id }) => id === 'field')?.box ?? null);

/** What the tape read, else what it would by what it did. */
function reads(shown: Shown, of: Of, reading: Reading): Mm {
  const box = meant(shown, of) ?? shown.face.box;
  const read = asked(shown)[of];
  return read[reading] ?? spanOf(cornersOf(read, box.w, box.h)?.corners ?? ringOfBox(box), reading);
}

const withMeasured = (bed: Bed, change: Partial<BedMeasured>): Bed => ({
  ...bed,
  measured: { ...UNMEASURED, ...bed.measured, ...change },
});

export type MeasuredField = FormField<Shown, Bed>;

/** One field for each reading of a rectangle, in the order in which a tape takes them. */
export const readingFields = (of: Of): readonly MeasuredField[] =>
  READINGS.map((reading) => ({
    is: 'length',
    label: `bed.read.${reading}`,
    min: 100,
    when: (shown) => isMeasured(shown) && meant(shown, of) !== null,
    get: (shown) => reads(shown, of, reading),
    put: (mm, { design: { bed } }) => withMeasured(bed, { [of]: { ...bed.measured?.[of], [reading]: mm } }),
  }));

/** What each edge lies out of a string: at its middle, and at its quarters. */
export const bowFields = (of: Of, places: readonly Place[]): readonly MeasuredField[] =>
  EDGES.flatMap((edge) =>
    places.map(
      (place): MeasuredField => ({
        is: 'length',
        label: `bed.bow.${edge}.${place}`,
        min: -FARTHEST_BOW,
        max: FARTHEST_BOW,
        when: (shown) => isMeasured(shown) && meant(shown, of) !== null,
        get: (shown) => bowAt(shown, of, edge, place),
        put: (mm, { design: { bed } }) => {
          const was = bed.measured?.[of].bows;
          const bows = { ...was, [edge]: { ...was?.[edge], [place]: mm } };
          return withMeasured(bed, { [of]: { ...bed.measured?.[of], bows } });
        },
      }),
    ),
  );

/** What was read, else what the bed has by the rest; where nothing tells, 0. */
function bowAt(shown: Shown, of: Of, edge: EdgeName, place: Place): Mm {
  const known = shown.face.real?.find((one) => one.of === of)?.bows[edge];
  return asked(shown)[of].bows?.[edge]?.[place] ?? known?.[place] ?? (known ? outAt(known, place) : 0);
}

/** Whether the bed was measured at all. */
export const IS_MEASURED: MeasuredField = {
  is: 'switch',
  label: 'bed.isMeasured',
  hint: 'bed.measuredHint',
  place: 'wide',
  get: ({ design }) => design.bed.measured !== undefined,
  put: (on, { design: { bed } }) => {
    const { measured: _, ...rest } = bed;
    return on ? withMeasured(bed, {}) : rest;
  },
};

const KEEPS = named('bed.keep', ['bottom', 'top', 'left', 'right', 'level']);
const BORDERS = named('bed.border', ['square', 'along']);

/** What the layout is square to, and what takes the taper. */
export const FIT_FIELDS: readonly MeasuredField[] = [
  {
    is: 'choice',
    label: 'bed.keep',
    when: isMeasured,
    of: KEEPS,
    get: (shown) => asked(shown).keep,
    put: (value, { design }) =>
      withMeasured(design.bed, { keep: KEEPS.find((one) => one.value === value)?.value ?? UNMEASURED.keep }),
  },
  {
    is: 'length',
    label: 'bed.rise',
    min: -500,
    max: 500,
    when: (shown) => isMeasured(shown) && asked(shown).keep === 'level',
    get: (shown) => asked(shown).rise,
    put: (rise, { design }) => withMeasured(design.bed, { rise }),
  },
  {
    is: 'choice',
    label: 'bed.border',
    place: 'wide',
    when: isMeasured,
    of: BORDERS,
    get: (shown) => asked(shown).border,
    put: (value, { design }) => withMeasured(design.bed, { border: value === 'along' ? 'along' : 'square' }),
  },
];
