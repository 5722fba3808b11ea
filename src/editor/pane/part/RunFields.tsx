import { USUAL_SEGMENTS } from '../../../design/limits.ts';
import { isBowed, isClosed } from '../../../design/path.ts';
import type { Run } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { lookOf, outlineOf } from '../../../layout/place/outlines.ts';
import type { Stock } from '../../../materials/types.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { stocksOf } from '../../shipped/tables.ts';
import { useDesign } from '../../state/hooks.ts';
import { t } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { EndFields } from './EndFields.tsx';
import { freedOf, MEASURE_FIELDS, NAMED } from './shapeFields.ts';
import { usePart } from './usePart.ts';

/** An own path begins as the frame it was. */
const SQUARE = [
  { u: 0, v: 0 },
  { u: 1, v: 0 },
  { u: 1, v: 1 },
  { u: 0, v: 1 },
];

type Arched = Extract<Run['path'], { readonly form: 'arched' }>;
type ShapedPath = Extract<Run['path'], { readonly form: 'shape' }>;
type Cornered = Extract<Run['path'], { readonly form: 'points' }>;
/** How the arch or the bows of a path are made. */
type Made = Pick<Arched | Cornered | ShapedPath, 'segments' | 'band'>;

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

/** Whether something of a path is neither straight nor of a circle: that is made of straight segments, whatever its arcs are. */
const hasSmooth = (path: Made | Run['path']): boolean =>
  ('points' in path && path.points.some(({ side }) => side?.as === 'smooth')) ||
  ('shape' in path && (path.shape.form === 'elliptical' || path.shape.form === 'round'));

const BOW_FIELDS: readonly FormField<Made>[] = [
  {
    is: 'choice',
    label: 'run.arch',
    place: 'wide',
    hintOf: (made) => (made.band && hasSmooth(made) ? t('run.smoothStays') : undefined),
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
    of: () => [
      ...(['frame', 'arched', 'points'] as const).map((value) => ({ value, label: t(`path.${value}`) })),
      ...READY.map((value) => ({
        value,
        label: t(`shape.${value}`),
        group: t(`shape.family.${outlineOf(value).family}`),
      })),
    ],
    get: ({ path }) => (path.form === 'shape' ? path.shape.form : path.form),
    put: (form: 'frame' | 'arched' | 'points' | Ready, { path, box }) => ({ path: pathOf(form, path, box) }),
  },
  { is: 'choice', label: 'run.side', field: 'side', of: named('side', ['inside', 'outside']) },
];

/** Ready outlines that a path may run along: of one border each, and not the arch that a path has by itself. */
const READY = NAMED.filter((form) => form !== 'arched' && form !== 'arch-band' && form !== 'ring');
type Ready = (typeof READY)[number];

/** A path of another form, in the same box; corners of its own are those of the shape that it had. */
function pathOf(form: 'frame' | 'arched' | 'points' | Ready, path: Run['path'], box: Box): Run['path'] {
  if (form === 'frame') return { form };
  if (form === 'arched') return { form, rise: box.w / 4, segments: USUAL_SEGMENTS };
  if (form !== 'points') return { form: 'shape', shape: outlineOf(form).first(box) };
  if (path.form === 'points') return path;
  const own = path.form === 'shape' ? freedOf(path.shape, box) : null;
  return { form, points: own?.form === 'polygon' ? own.points : SQUARE, closed: true };
}

/** No saw miters the crown of an ogee, which turns back on itself: it is sawn at first, from the sheet nearest in thickness. */
function sawnCrown(next: Partial<Run>, stock: string, stocks: ReadonlyMap<string, Stock>): Partial<Run> {
  const { path } = next;
  const own = stocks.get(stock);
  if (path?.form !== 'shape' || path.shape.form !== 'ogee' || path.band || !own) return next;
  const off = (sheet: Stock) => Math.abs(sheet.thickness - own.thickness);
  const [sheet] = [...stocks.values()].filter(({ form }) => form === 'sheet').sort((a, b) => off(a) - off(b));
  return sheet ? { ...next, path: { ...path, band: { stock: sheet.id, pieces: BAND_PIECES } } } : next;
}

const OPEN_FIELDS: readonly FormField<ShapedPath>[] = [
  {
    is: 'switch',
    label: 'run.open',
    place: 'wide',
    when: ({ shape }) => lookOf(shape) !== null,
    get: ({ open }) => open === true,
    put: (on) => ({ open: on ? true : undefined }),
  },
];

/** What is left of a path that was cut in two may be made whole again. */
const ONLY_FIELDS: readonly FormField<Exclude<Run['path'], ShapedPath>>[] = [
  {
    is: 'switch',
    label: 'run.only',
    place: 'wide',
    when: ({ only }) => only !== undefined,
    get: () => true,
    put: () => ({ only: undefined }),
  },
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
  const { box, laid, change } = usePart(part);
  const { path } = part;
  const stocks = stocksOf(useDesign());
  return (
    <div className="fields">
      <Fields
        of={PATH_FIELDS}
        value={laid}
        onChange={(next) => change(sawnCrown(next, part.stock, stocks))}
      />
      {path.form === 'arched' ? (
        <Fields of={ARCH_FIELDS} value={path} onChange={(arch) => change({ path: { ...path, ...arch } })} />
      ) : null}
      {path.form === 'shape' ? (
        <>
          <Fields
            of={MEASURE_FIELDS}
            value={{ shape: path.shape, box }}
            onChange={({ shape }) => change({ path: { ...path, shape } })}
          />
          <Fields of={OPEN_FIELDS} value={path} onChange={(next) => change({ path: { ...path, ...next } })} />
        </>
      ) : null}
      {path.form === 'shape' ? null : (
        <Fields
          of={ONLY_FIELDS}
          value={path}
          onChange={(next) => change({ path: { ...path, ...next } as Run['path'] })}
        />
      )}
      {path.form !== 'frame' && isBowed(path) ? (
        <Fields of={BOW_FIELDS} value={path} onChange={(made) => change({ path: { ...path, ...made } })} />
      ) : null}
      {isClosed(path) ? null : <EndFields part={part} onCommit={(ends) => change({ ends })} />}
      <Fields of={CORNER_FIELDS} value={laid} onChange={change} />
    </div>
  );
}
