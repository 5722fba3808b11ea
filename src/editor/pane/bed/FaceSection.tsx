import { type FaceSide, leastFace, withFace } from '../../../bed/faceSize.ts';
import type { Bed } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, labelText } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import type { Shown } from '../../document/shown.ts';
import { useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';

const sideField = (side: FaceSide): FormField<Shown, Bed> => ({
  is: 'length',
  label: `bed.face.${side}`,
  min: ({ design }) => leastFace(design.bed, side),
  get: ({ face }) => face[side],
  put: (mm, { design }) => withFace(design.bed, side, mm),
});

const FIELDS = [sideField('width'), sideField('height')];

/** The face as it is measured with the bed up; the room around the mattress follows. */
export function FaceSection({ bed, onPropose }: { bed: Bed; onPropose: (next: Bed, label: string) => void }) {
  const t = useWords();
  const settled = useSettled();
  const room = (mm: number) => lengthText(settled.design, mm);
  return (
    <Section title="title.face">
      <FieldGrid of={FIELDS} value={settled} onChange={(next, label) => onPropose(next, labelText(label))} />
      <Typeset
        as="p"
        className="note"
        text={t('bed.face.room', {
          across: room(bed.allowance.width),
          along: room(bed.allowance.length),
        })}
      />
    </Section>
  );
}
