import type { ComponentType } from 'react';
import type { PartArray, PartOf } from '../../../design/schema.ts';
import { isFixedAlong } from '../../../layout/structure.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import {
  MEMBER_KINDS,
  type MemberKind,
  partOfMember,
  type Repeatable,
  withMemberKind,
} from '../../edit/member.ts';
import { useWords } from '../../words/t.ts';
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
  /** A strip takes its width from its stock; a direction without spacing stretches the member. */
  const ownWidth = part.across && !isFixedAlong(member, 'x');
  const ownHeight = part.up && !isFixedAlong(member, 'y');
  return (
    <fieldset className="sub">
      <legend>{t('array.member')}</legend>
      <div className="fields">
        <div className="wide">
          <ChoiceField
            label={t('array.kind')}
            value={member.kind}
            choices={MEMBER_KINDS.map((value) => ({ value, label: t(`kind.${value}`) }))}
            onCommit={(kind) => change(withMemberKind({ ...part, box }, kind))}
          />
        </div>
        {ownWidth ? (
          <MeasureField
            label={t('array.memberWidth')}
            min={1}
            value={memberSize.w}
            onCommit={(w) => change({ memberSize: { ...memberSize, w } })}
          />
        ) : null}
        {ownHeight ? (
          <MeasureField
            label={t('array.memberHeight')}
            min={1}
            value={memberSize.h}
            onCommit={(h) => change({ memberSize: { ...memberSize, h } })}
          />
        ) : null}
      </div>
      <MemberContext value={part}>
        <OwnFields key={member.kind} part={one} />
      </MemberContext>
    </fieldset>
  );
}
