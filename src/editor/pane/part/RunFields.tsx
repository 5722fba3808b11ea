import { USUAL_SEGMENTS } from '../../../design/limits.ts';
import { isBowed } from '../../../design/path.ts';
import type { Run } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { t } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { EndFields } from './EndFields.tsx';
import { usePart } from './usePart.ts';

/** An own path begins as the frame it was. */
const SQUARE = [
  { u: 0, v: 0 },
  { u: 1, v: 0 },
  { u: 1, v: 1 },
  { u: 0, v: 1 },
];

type Arched = Extract<Run['path'], { readonly form: 'arched' }>;
type Cornered = Extract<Run['path'], { readonly form: 'points' }>;
/** How the arch or the bows of a path are made. */
type Made = Pick<Arched | Cornered, 'segments' | 'band'>;

/** Straight segments of the run's own stock, in the list of sheets. */
const OF_THE_STOCK = '';
/** The stock itself, bent; no id of a stock has a space in it. */
const BENT = 'of the stock';
/** So many pieces a head is sawn in at first: short enough that little wood is lost in the hollow of each. */
const BAND_PIECES = 3;

const ARCH_FIELDS: readonly FormField<Arched>[] = [
  { is: 'length', label: 'shape.rise', field: 'rise', min: 1 },
];

const isBent = ({ path }: Pick<Run, 'path'>): boolean => 'band' in path && path.band?.stock === null;

const BOW_FIELDS: readonly FormField<Made>[] = [
  {
    is: 'choice',
    label: 'run.arch',
    place: 'wide',
    of: ({ band }, design) => [
      { value: OF_THE_STOCK, label: t('run.segmented') },
      { value: BENT, label: t('run.bent') },
      ...stockChoices(design, ['sheet'], band?.stock ?? '').map((sheet) => ({
        ...sheet,
        label: t('run.sawn', { sheet: sheet.label }),
      })),
    ],
    get: ({ band }) => (band ? (band.stock ?? BENT) : OF_THE_STOCK),
    put: (stock, { band }) => {
      if (stock === OF_THE_STOCK) return { band: undefined };
      if (stock === BENT) return { band: { stock: null, pieces: 1 } };
      return { band: { stock, pieces: band?.stock ? band.pieces : BAND_PIECES } };
    },
  },
  {
    is: 'number',
    label: 'run.segments',
    when: ({ band }) => !band,
    get: ({ segments }) => segments ?? USUAL_SEGMENTS,
    put: (segments) => ({ segments }),
    whole: true,
    min: 2,
    max: 48,
  },
  {
    is: 'number',
    label: 'run.segments',
    when: ({ band }) => band !== undefined,
    get: ({ band }) => band?.pieces ?? BAND_PIECES,
    put: (pieces, { band }) => (band ? { band: { ...band, pieces } } : {}),
    whole: true,
    min: 1,
    max: 24,
  },
];

const PATH_FIELDS: readonly FormField<Run>[] = [
  {
    is: 'choice',
    label: 'part.stock',
    field: 'stock',
    place: 'wide',
    of: (run, design) => stockChoices(design, isBent(run) ? ['flat'] : ['shaped', 'flat'], run.stock),
  },
  {
    is: 'choice',
    label: 'run.path',
    of: named('path', ['frame', 'arched', 'points']),
    get: ({ path }) => path.form,
    put: (form: Run['path']['form'], { path, box }) => {
      if (form === 'frame') return { path: { form } };
      if (form === 'arched') return { path: { form, rise: box.w / 4, segments: USUAL_SEGMENTS } };
      return { path: path.form === 'points' ? path : { form, points: SQUARE, closed: true } };
    },
  },
  { is: 'choice', label: 'run.side', field: 'side', of: named('side', ['inside', 'outside']) },
];

const CORNER_FIELDS: readonly FormField<Run>[] = [
  {
    is: 'choice',
    label: 'corners.title',
    field: 'corner',
    of: named('corner', ['miter', 'butt-across', 'butt-up']),
  },
  {
    is: 'switch',
    label: 'strip.onEdge',
    get: ({ onEdge }) => onEdge === true,
    put: (on) => ({ onEdge: on ? true : undefined }),
  },
  { is: 'switch', label: 'strip.fit', field: 'fit' },
];

export function RunFields({ part }: { part: Run }) {
  const { laid, change } = usePart(part);
  const { path } = part;
  return (
    <div className="fields">
      <Fields of={PATH_FIELDS} value={laid} onChange={change} />
      {path.form === 'arched' ? (
        <Fields of={ARCH_FIELDS} value={path} onChange={(arch) => change({ path: { ...path, ...arch } })} />
      ) : null}
      {path.form !== 'frame' && isBowed(path) ? (
        <Fields of={BOW_FIELDS} value={path} onChange={(made) => change({ path: { ...path, ...made } })} />
      ) : null}
      {path.form === 'points' && !path.closed ? (
        <EndFields part={part} onCommit={(ends) => change({ ends })} />
      ) : null}
      <Fields of={CORNER_FIELDS} value={laid} onChange={change} />
    </div>
  );
}
