import type { ComponentType } from 'react';
import { eachOf, isBought, isPaint } from '../../../design/made.ts';
import type { Part, PartKind, PartOf } from '../../../design/schema.ts';
import { isFixedAlong } from '../../../layout/structure.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { TextField } from '../../control/TextField.tsx';
import { useSay } from '../../control/useSay.ts';
import { useDesign, useFace, useLayout } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { BARE, finishChoices, supportChoices } from '../facts/choices.ts';
import { ArrayFields } from './ArrayFields.tsx';
import { CornerFields } from './CornerFields.tsx';
import { FittingFields } from './FittingFields.tsx';
import { PaintedFields } from './PaintedFields.tsx';
import { PanelFields } from './PanelFields.tsx';
import { RunFields } from './RunFields.tsx';
import { SignFields } from './SignFields.tsx';
import { StripFields } from './StripFields.tsx';
import { usePart } from './usePart.ts';

const KIND_FIELDS: { readonly [K in PartKind]: ComponentType<{ part: PartOf<K> }> } = {
  strip: StripFields,
  run: RunFields,
  panel: PanelFields,
  sign: SignFields,
  fitting: FittingFields,
  painted: PaintedFields,
  array: ArrayFields,
};

/** The fields every part has, and those of its kind. */
export function PartFields({ part }: { part: Part }) {
  const t = useWords();
  const design = useDesign();
  const face = useFace();
  const layout = useLayout();
  const say = useSay();
  const { box, change, place } = usePart(part);
  const laid = layout.parts.find((p) => p.part === part.id);
  const OwnFields = KIND_FIELDS[part.kind] as ComponentType<{ part: Part }>;
  const widthFixed = isFixedAlong(part, 'x');
  const heightFixed = isFixedAlong(part, 'y');
  return (
    <>
      <div className="fields">
        <div className="wide">
          <TextField label={t('part.name')} value={part.name} onCommit={(name) => change({ name })} />
        </div>
        <MeasureField
          label={t('part.left')}
          min={-10_000}
          value={box.x}
          disabled={part.locked}
          onCommit={(x) => place({ x })}
        />
        <MeasureField
          label={t('part.bottom')}
          min={-10_000}
          value={box.y}
          disabled={part.locked}
          onCommit={(y) => place({ y })}
        />
        <MeasureField
          label={t('part.width')}
          min={0.1}
          value={box.w}
          disabled={part.locked || widthFixed}
          onCommit={(w) => place({ w })}
        />
        <MeasureField
          label={t('part.height')}
          min={0.1}
          value={box.h}
          disabled={part.locked || heightFixed}
          onCommit={(h) => place({ h })}
        />
      </div>
      <OwnFields part={part} />
      <CornerFields part={part} />
      <div className="fields">
        <ChoiceField
          label={t('part.on')}
          value={part.on}
          choices={supportChoices(design, part, face.levels)}
          hint={
            laid
              ? t('part.stands', {
                  from: say.fromRim(laid.z0),
                  to: say.fromRim(laid.z1),
                })
              : undefined
          }
          // What was chosen stays; “whatever is beneath” is found anew wherever the part is put.
          onCommit={(on) => change({ on, onChosen: on === 'face' ? undefined : true })}
        />
        {isBought(eachOf(part)) ? null : (
          <ChoiceField
            label={t('part.finish')}
            value={eachOf(part).finish ?? BARE}
            choices={finishChoices(design)}
            onCommit={(id) => {
              const finish = id === BARE ? null : id;
              // It is the members of an array that are seen.
              if (part.kind === 'array') change({ finish, member: { ...part.member, finish } });
              else change({ finish });
            }}
          />
        )}
        {isPaint(part) ? null : (
          <ChoiceField
            label={t('part.fixing')}
            value={part.fixing.how}
            choices={(['brads', 'screws', 'glue', 'none'] as const).map((value) => ({
              value,
              label: t(`fixing.${value}`),
            }))}
            onCommit={(how) => change({ fixing: { ...part.fixing, how } })}
          />
        )}
        {part.fixing.how === 'brads' || part.fixing.how === 'screws' ? (
          <SwitchField
            label={t('part.glue')}
            value={part.fixing.glue}
            onCommit={(glue) => change({ fixing: { ...part.fixing, glue } })}
          />
        ) : null}
        <SwitchField label={t('part.locked')} value={part.locked} onCommit={(locked) => change({ locked })} />
      </div>
    </>
  );
}
