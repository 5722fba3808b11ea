import { RIPPED } from '../../../design/defaults.ts';
import type { Design, Fill } from '../../../design/schema.ts';
import { isOfSheet } from '../../../layout/fill/patterns.ts';
import { inches } from '../../../measure/units.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { Remove } from '../../control/Remove.tsx';
import { referenceName } from '../../edit/sentence.ts';
import { stocksOf } from '../../shipped/tables.ts';
import { useDesign } from '../../state/hooks.ts';
import { t } from '../../words/t.ts';
import { BARE, stockChoices } from '../facts/choices.ts';
import { MemberGrid } from './MemberGrid.tsx';
import { Openings } from './Openings.tsx';
import { SHAPE_FIELDS } from './shapeFields.ts';
import { usePart } from './usePart.ts';

type Pattern = Fill['pattern'];
type Form = Pattern['form'];

/** A pattern as it is when it has just been chosen, and the gap that goes with it where it needs one. */
const FIRST: { readonly [F in Form]: Partial<Fill> & { readonly pattern: Extract<Pattern, { form: F }> } } = {
  planks: { pattern: { form: 'planks', edge: 'square', lap: inches(3 / 8) } },
  // Boards half an inch apart, lapped by half an inch on either side: a batten of at least 1 1/2 in.
  battened: { pattern: { form: 'battened', stock: 'lath-quarter' }, gap: inches(1 / 2) },
  // Beads an inch and a half to two and a half apart: common practice, no source.
  grooved: {
    pattern: { form: 'grooved', face: inches(1.5), depth: inches(1 / 8) },
    gap: inches(1 / 8),
    stock: 'mdf-quarter',
  },
  lattice: { pattern: { form: 'lattice' }, gap: inches(2.75) },
  // Slats of a quarter inch lap by 3/16 to 1/4 in (woodweb.com, shutter specifications; check-values-2.md, section 18).
  louvers: { pattern: { form: 'louvers', lap: inches(1 / 4) }, angle: 0, stock: 'lath-quarter' },
  courses: { pattern: { form: 'courses', length: inches(8), bond: 'half' } },
  basket: { pattern: { form: 'basket', count: 3 } },
  herringbone: { pattern: { form: 'herringbone', length: inches(12) } },
  chevron: { pattern: { form: 'chevron', span: inches(8), slope: 45 } },
};

const FORMS = [
  'planks',
  'battened',
  'grooved',
  'lattice',
  'courses',
  'basket',
  'herringbone',
  'chevron',
  'louvers',
] as const satisfies readonly Form[];

/** The fields of a pattern under their names; each is asked for where the pattern has it. */
const PATTERN_FIELDS: readonly FormField<Pattern>[] = [
  asked('edge', { is: 'choice', label: 'fill.edge', of: named('edge', ['square', 'lapped', 'tongued']) }),
  {
    ...asked('lap', { is: 'length', label: 'fill.lap' }),
    when: (pattern) => pattern.form === 'planks' && pattern.edge !== 'square',
  },
  { ...asked('lap', { is: 'length', label: 'fill.overlap' }), when: ({ form }) => form === 'louvers' },
  {
    is: 'switch',
    label: 'fill.leaning',
    place: 'wide',
    when: ({ form }) => form === 'louvers',
    get: (pattern) => pattern.form === 'louvers' && pattern.tilt !== undefined,
    put: (on) => ({ tilt: on ? 25 : undefined }),
  },
  {
    is: 'switch',
    label: 'fill.starter',
    hint: 'fill.starterHint',
    place: 'wide',
    when: (pattern) => pattern.form === 'louvers' && pattern.tilt === undefined,
    get: (pattern) => pattern.form === 'louvers' && pattern.starter === true,
    put: (on) => ({ starter: on || undefined }),
  },
  {
    is: 'number',
    label: 'fill.tilt',
    unit: '°',
    min: 5,
    max: 60,
    when: (pattern) => pattern.form === 'louvers' && pattern.tilt !== undefined,
    get: (pattern) => (pattern.form === 'louvers' ? (pattern.tilt ?? 0) : 0),
    put: (tilt) => ({ tilt }),
  },
  asked('stock', {
    is: 'choice',
    label: 'fill.batten',
    of: (pattern: Pattern, design: Design) =>
      stockChoices(design, ['flat'], pattern.form === 'battened' ? pattern.stock : ''),
  }),
  {
    is: 'length',
    label: 'fill.longest',
    place: 'wide',
    when: ({ form }) => form === 'planks',
    get: (pattern) => (pattern.form === 'planks' ? (pattern.length ?? 0) : 0),
    put: (length) => ({ length }),
  },
  asked('face', { is: 'length', label: 'fill.face', min: 1 }),
  asked('depth', { is: 'length', label: 'fill.grooveDepth', min: 0.1 }),
  asked('length', { is: 'length', label: 'fill.length', min: 1 }),
  {
    is: 'switch',
    label: 'pattern.halved',
    place: 'wide',
    when: ({ form }) => form === 'lattice',
    get: (pattern) => pattern.form === 'lattice' && pattern.halved === true,
    put: (on) => ({ halved: on || undefined }),
  },
  asked('bond', { is: 'choice', label: 'fill.bond', of: named('bond', ['half', 'third', 'stacked']) }),
  asked('count', { is: 'number', label: 'fill.count', whole: true, min: 2, max: 12 }),
  asked('span', { is: 'length', label: 'fill.span', min: 1 }),
  asked('slope', { is: 'number', label: 'fill.slope', unit: '°', min: 5, max: 75 }),
];

/** A field that some patterns have, under the same name. */
function asked(name: string, field: Record<string, unknown>): FormField<Pattern> {
  return {
    ...field,
    when: (pattern: Pattern) => name in FIRST[pattern.form].pattern,
    get: (pattern: Pattern) => (pattern as Readonly<Record<string, unknown>>)[name],
    put: (next: unknown, pattern: Pattern) => ({ ...pattern, [name]: next }) as Pattern,
  } as unknown as FormField<Pattern>;
}

/** What courses have that are sawn apart. */
const OPEN = '-open-';

const WIDTH = {
  get: ({ width }: Fill) => width ?? RIPPED,
  put: (width: number) => ({ width }),
};

const FILL_FIELDS: readonly FormField<Fill>[] = [
  {
    is: 'choice',
    label: 'part.stock',
    field: 'stock',
    place: 'wide',
    of: ({ stock, pattern }, design) =>
      stockChoices(design, isOfSheet(pattern) ? ['sheet'] : ['flat', 'sheet'], stock),
  },
  {
    is: 'length',
    label: 'fill.width',
    place: 'wide',
    min: 1,
    when: ({ stock, pattern }, design) =>
      !isOfSheet(pattern) && stocksOf(design).get(stock)?.form === 'sheet',
    ...WIDTH,
  },
  ...SHAPE_FIELDS,
  {
    is: 'choice',
    label: 'fill.pattern',
    place: 'wide',
    of: named('pattern', FORMS),
    get: ({ pattern }) => pattern.form,
    put: (form: Form) => FIRST[form],
  },
  {
    is: 'choice',
    label: 'fill.joints',
    place: 'wide',
    when: ({ pattern }) => pattern.form === 'courses',
    of: (_, design) => [
      { value: OPEN, label: t('joints.open') },
      { value: BARE, label: t('joints.bare') },
      ...namesOf(design.finishes),
    ],
    get: ({ pattern }) =>
      pattern.form === 'courses' && pattern.joints ? (pattern.joints.finish ?? BARE) : OPEN,
    put: (next: string, { pattern, width, stock }) => {
      if (pattern.form !== 'courses' || next === OPEN)
        return { pattern: { ...pattern, joints: undefined } as Pattern };
      return {
        pattern: { ...pattern, joints: { finish: next === BARE ? null : next } },
        ...(pattern.joints
          ? { stock }
          : { stock: 'mdf-quarter', width: width ?? inches(2.25), gap: inches(3 / 8) }),
      };
    },
  },
  ...within<Fill, 'pattern'>('pattern', PATTERN_FIELDS),
  {
    is: 'length',
    label: 'fill.course',
    min: 1,
    when: ({ pattern }) => pattern.form === 'courses' && isOfSheet(pattern),
    ...WIDTH,
  },
  {
    is: 'length',
    label: 'fill.gap',
    field: 'gap',
    when: ({ pattern: { form } }) => form !== 'grooved' && form !== 'louvers',
  },
  { is: 'length', label: 'fill.groove', field: 'gap', when: ({ pattern }) => pattern.form === 'grooved' },
  { is: 'number', label: 'fill.angle', field: 'angle', unit: '°', min: -180, max: 180 },
  {
    is: 'choice',
    label: 'fill.start',
    field: 'start',
    place: 'wide',
    when: ({ pattern: { form } }) => form !== 'herringbone' && form !== 'louvers',
    of: named('start', ['balanced', 'piece', 'gap', 'low', 'high']),
  },
  {
    is: 'choice',
    label: 'fill.start',
    place: 'wide',
    when: ({ pattern }) => pattern.form === 'herringbone',
    of: named('vee', ['piece', 'gap', 'low', 'high']),
    get: ({ start }) => (start === 'balanced' ? 'piece' : start),
    put: (start: Fill['start']) => ({ start }),
  },
];

/** What a fill is sawn from, the shape it takes up, and how its pieces are set out. */
export function FillFields({ part }: { part: Fill }) {
  const design = useDesign();
  const { box, laid, change: put } = usePart(part);
  const change = (fields: Partial<Fill>) =>
    put(fields.around?.length === 0 ? { ...fields, around: undefined } : fields);
  return (
    <>
      <FieldGrid of={FILL_FIELDS} value={laid} onChange={change} />
      <Openings
        part={part}
        of={part.openings ?? []}
        box={box}
        onChange={(openings) => change({ openings })}
      />
      {part.around?.map((at) => (
        <p key={at} className="note">
          {t('fill.around', { name: referenceName(design, at) })}{' '}
          <Remove
            label={t('fill.runOn', { name: referenceName(design, at) })}
            onClick={() => change({ around: part.around?.filter((other) => other !== at) })}
          />
        </p>
      ))}
      <MemberGrid part={part} />
    </>
  );
}
