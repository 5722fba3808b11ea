import { EDGES } from '../../../bed/bows.ts';
import { withFace } from '../../../bed/faceSize.ts';
import { squareWithin } from '../../../bed/realEdges.ts';
import type { Bed } from '../../../design/schema.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type Label, labelText } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useCheckWords } from '../../control/useCheckWords.ts';
import type { Shown } from '../../document/shown.ts';
import { useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';
import { bowFields, FIT_FIELDS, IS_MEASURED, readingFields } from './measuredFields.ts';

const BOWS = {
  rim: bowFields('rim', ['middle']),
  field: bowFields('field', ['middle']),
} as const;
const QUARTERS = {
  rim: bowFields('rim', ['first', 'last']),
  field: bowFields('field', ['first', 'last']),
} as const;
const READ = { rim: readingFields('rim'), field: readingFields('field') } as const;
const TOLD: ReadonlySet<string> = new Set([
  'bed.out-of-square',
  'bed.bowed',
  'bed.edge',
  'bed.datum',
  'bed.corner',
]);

/** The face as a tape reads it, what that comes to, and what is to take the taper. */
export function MeasuredSection({ onPropose }: { onPropose: (next: Bed, label: string) => void }) {
  const t = useWords();
  const settled = useSettled();
  const { design, face, bed } = settled;
  const message = useCheckWords(design);
  const take = (next: Bed, label: Label) => onPropose(next, labelText(label));
  const wrongIn = (of: string) => (label: Label) => {
    const check = bed.checks.find(
      ({ code, figures }) =>
        code === 'bed.not-closing' && figures.of === of && label === `bed.read.${figures.reading}`,
    );
    return check && message(check);
  };
  const form = { value: settled, onChange: take };
  const rim = face.real?.find(({ of }) => of === 'rim');
  const square = rim && squareWithin(rim);
  const fits = square && Math.abs(square.w - face.width) + Math.abs(square.h - face.height) < 0.1;
  const told = bed.checks.filter(({ code }) => TOLD.has(code));
  return (
    <Section title="bed.measured">
      <FieldGrid of={[IS_MEASURED]} {...form} />
      {design.bed.measured ? (
        <>
          <h4 className="built-theme">{t('bed.read.rim')}</h4>
          <FieldGrid of={READ.rim} {...form} errorOf={wrongIn('rim')} />
          <BowFields of="rim" form={form} />
          {design.bed.skin ? null : (
            <>
              <h4 className="built-theme">{t('bed.read.field')}</h4>
              <FieldGrid of={READ.field} {...form} errorOf={wrongIn('field')} />
              <BowFields of="field" form={form} />
            </>
          )}
          <FieldGrid of={FIT_FIELDS} {...form} />
          {told.length > 0 ? (
            <div role="status" className="told">
              <ul className="note">
                {told.map((check) => (
                  <li
                    key={`${check.code}${check.figures.of}${check.figures.corner}${check.figures.edge}${check.figures.axis}`}
                  >
                    <Typeset text={message(check)} />
                  </li>
                ))}
              </ul>
            </div>
          ) : null}
          {square && !fits ? (
            <>
              <p className="note">
                <Typeset
                  text={t('bed.squareFace', {
                    w: lengthText(design, square.w),
                    h: lengthText(design, square.h),
                  })}
                />
              </p>
              <div className="btn-row">
                <Button
                  onClick={() =>
                    onPropose(
                      withFace(withFace(design.bed, 'width', square.w), 'height', square.h),
                      t('bed.useSquareFace'),
                    )
                  }
                >
                  {t('bed.useSquareFace')}
                </Button>
              </div>
            </>
          ) : null}
        </>
      ) : null}
    </Section>
  );
}

/** What a string along each edge reads; at the quarters only where the person asks for it. */
function BowFields({
  of,
  form,
}: {
  of: 'rim' | 'field';
  form: { readonly value: Shown; readonly onChange: (next: Bed, label: Label) => void };
}) {
  const t = useWords();
  const read = form.value.design.bed.measured?.[of].bows;
  const atQuarters = EDGES.some(
    (edge) => read?.[edge]?.first !== undefined || read?.[edge]?.last !== undefined,
  );
  return (
    <details className="fold bows" open={read !== undefined}>
      <summary className="section-title">{t('bed.bows')}</summary>
      <p className="note">{t('bed.bowsHint')}</p>
      <FieldGrid of={BOWS[of]} {...form} />
      <details className="fold bows" open={atQuarters}>
        <summary className="section-title">{t('bed.bowsMore')}</summary>
        <p className="note">{t('bed.bowsMoreHint')}</p>
        <FieldGrid of={QUARTERS[of]} {...form} />
      </details>
    </details>
  );
}
