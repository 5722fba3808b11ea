import type { ComponentType } from 'react';
import type { Face } from '../../../bed/face.ts';
import { eachOf, isBought, isLettered, isMany, isPaint } from '../../../design/made.ts';
import type { Part, PartKind, PartOf } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { isFixedAlong } from '../../../layout/structure.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { useSay } from '../../control/useSay.ts';
import { useFace, useLayout } from '../../state/hooks.ts';
import { t, useWords, type WordKey } from '../../words/t.ts';
import { BARE, finishChoices, supportChoices } from '../facts/choices.ts';
import { ArrayFields } from './ArrayFields.tsx';
import { CornerFields } from './CornerFields.tsx';
import { FillFields } from './FillFields.tsx';
import { FittingFields } from './FittingFields.tsx';
import { PaintedFields } from './PaintedFields.tsx';
import { PanelFields } from './PanelFields.tsx';
import { RunFields } from './RunFields.tsx';
import { LetteringFields, SignFields } from './SignFields.tsx';
import { StripFields } from './StripFields.tsx';
import { usePart } from './usePart.ts';

const KIND_FIELDS: { readonly [K in PartKind]: ComponentType<{ part: PartOf<K> }> } = {
  strip: StripFields,
  run: RunFields,
  panel: PanelFields,
  sign: SignFields,
  fitting: FittingFields,
  painted: PaintedFields,
  lettering: LetteringFields,
  array: ArrayFields,
  fill: FillFields,
};

type Side = 'x' | 'y' | 'w' | 'h';

const boxField = (
  side: Side,
  label: WordKey,
  min: number,
  axis?: 'x' | 'y',
): FormField<Part, Partial<Box>> => ({
  is: 'length',
  label,
  min,
  off: (part) => part.locked || (axis !== undefined && isFixedAlong(part, axis)),
  get: ({ box }) => box[side],
  put: (mm) => ({ [side]: mm }),
});

const BOX_FIELDS = [
  boxField('x', 'part.left', -10_000),
  boxField('y', 'part.bottom', -10_000),
  boxField('w', 'size.width', 0.1, 'x'),
  boxField('h', 'part.height', 0.1, 'y'),
];

const NAME_FIELDS: readonly FormField<Pick<Part, 'name'>>[] = [
  { is: 'text', label: 'part.name', field: 'name', place: 'wide' },
];

/** What is painted under letters without a board is a ground, not their finish. */
const isLetters = (part: Part): boolean => isLettered(part) && isPaint(part);

const FIX_FIELDS: readonly FormField<Part, Partial<Pick<Part, 'finish' | 'fixing' | 'locked'>>>[] = [
  {
    is: 'choice',
    label: 'part.finish',
    when: (part) => !isBought(eachOf(part)) && !isLetters(part),
    of: (_, design) => finishChoices(design),
    get: (part) => eachOf(part).finish ?? BARE,
    put: (id, part) => {
      const finish = id === BARE ? null : id;
      // It is the members of an array that are seen.
      return isMany(part) ? { finish, member: { ...part.member, finish } } : { finish };
    },
  },
  {
    is: 'choice',
    label: 'part.ground',
    hint: 'part.groundHint',
    when: isLetters,
    of: (_, design) => [{ value: BARE, label: t('part.noGround') }, ...namesOf(design.finishes)],
    get: ({ finish }) => finish ?? BARE,
    put: (id) => ({ finish: id === BARE ? null : id }),
  },
  {
    is: 'choice',
    label: 'part.fixing',
    when: (part) => !isPaint(part),
    of: named('fixing', ['brads', 'screws', 'glue', 'none']),
    get: ({ fixing }) => fixing.how,
    put: (how: Part['fixing']['how'], { fixing }) => ({ fixing: { ...fixing, how } }),
  },
  {
    is: 'switch',
    label: 'part.glue',
    when: ({ fixing }) => fixing.how === 'brads' || fixing.how === 'screws',
    get: ({ fixing }) => fixing.glue,
    put: (glue, { fixing }) => ({ fixing: { ...fixing, glue } }),
  },
  { is: 'switch', label: 'part.locked', field: 'locked' },
];

interface Standing {
  readonly part: Part;
  readonly levels: Face['levels'];
  /** Between which heights it lies. */
  readonly stands: string | undefined;
}

const ON_FIELDS: readonly FormField<Standing, Pick<Part, 'on' | 'onChosen'>>[] = [
  {
    is: 'choice',
    label: 'part.on',
    of: ({ part, levels }, design) => supportChoices(design, part, levels),
    hintOf: ({ stands }) => stands,
    get: ({ part }) => part.on,
    // What was chosen stays; “whatever is beneath” is found anew wherever the part is put.
    put: (on) => ({ on, onChosen: on === 'face' ? undefined : true }),
  },
];

/** The fields every part has, and those of its kind. */
export function PartFields({ part }: { part: Part }) {
  const t = useWords();
  const face = useFace();
  const layout = useLayout();
  const say = useSay();
  const { laid: laidPart, change, place } = usePart(part);
  const laid = layout.parts.find((p) => p.part === part.id);
  const stands = laid && t('part.stands', { from: say.fromRim(laid.z0), to: say.fromRim(laid.z1) });
  const OwnFields = KIND_FIELDS[part.kind] as ComponentType<{ part: Part }>;
  return (
    <>
      <div className="fields">
        <Fields of={NAME_FIELDS} value={part} onChange={change} />
        <Fields of={BOX_FIELDS} value={laidPart} onChange={place} />
      </div>
      <OwnFields part={part} />
      <CornerFields part={part} />
      <div className="fields">
        <Fields of={ON_FIELDS} value={{ part, levels: face.levels, stands }} onChange={change} />
        <Fields of={FIX_FIELDS} value={laidPart} onChange={change} />
      </div>
    </>
  );
}
