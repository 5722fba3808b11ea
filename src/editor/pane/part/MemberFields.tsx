import type { ComponentType } from 'react';
import type { PartArray, PartOf } from '../../../design/schema.ts';
import { isFixedAlong } from '../../../layout/structure.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import {
  MEMBER_KINDS,
  type MemberKind,
  partOfMember,
  type Repeatable,
  withMemberKind,
} from '../../edit/member.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { FittingFields } from './FittingFields.tsx';
import { MemberContext } from './memberContext.ts';
import { PaintedFields } from './PaintedFields.tsx';
import { PanelFields } from './PanelFields.tsx';
import { RunFields } from './RunFields.tsx';
import { StripFields } from './StripFields.tsx';
import { usePart } from './usePart.ts';

const OWN_FIELDS: { readonly [K in MemberKind]: ComponentType<{ part: PartOf<K> }> } = {
  strip: StripFields,
  run: RunFields,
  panel: PanelFields,
  fitting: FittingFields,
  painted: PaintedFields,
};

/** A strip takes its width from its stock; a direction without spacing stretches the member. */
const sizeField = (label: WordKey, side: 'w' | 'h', axis: 'x' | 'y'): FormField<PartArray> => ({
  is: 'length',
  label,
  min: 1,
  when: (array) => Boolean(axis === 'x' ? array.across : array.up) && !isFixedAlong(array.member, axis),
  get: ({ memberSize }) => memberSize[side],
  put: (mm, { memberSize }) => ({ memberSize: { ...memberSize, [side]: mm } }),
});

const FIELDS: readonly FormField<PartArray>[] = [
  {
    is: 'choice',
    label: 'array.kind',
    place: 'wide',
    of: named('kind', MEMBER_KINDS),
    get: ({ member }) => member.kind,
    put: (kind: MemberKind, array) => withMemberKind(array, kind),
  },
  sizeField('array.memberWidth', 'w', 'x'),
  sizeField('array.memberHeight', 'h', 'y'),
];

/** What an array repeats: of which kind, with the fields of that kind, and how large each one is. */
export function MemberFields({ part }: { part: PartArray }) {
  const t = useWords();
  const { box, change } = usePart(part);
  const { member, memberSize } = part;
  const size = {
    w: part.across ? memberSize.w : box.w,
    h: part.up ? memberSize.h : box.h,
  };
  const one = partOfMember(part, member, { x: box.x, y: box.y, ...size });
  const OwnFields = OWN_FIELDS[member.kind] as ComponentType<{ part: Repeatable }>;
  return (
    <fieldset className="sub">
      <legend>{t('array.member')}</legend>
      <FieldGrid of={FIELDS} value={{ ...part, box }} onChange={change} />
      <MemberContext value={part}>
        <OwnFields key={member.kind} part={one} />
      </MemberContext>
    </fieldset>
  );
}
