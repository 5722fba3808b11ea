import { type FaceSide, leastFace, withFace } from '../../../bed/faceSize.ts';
import type { Bed } from '../../../design/schema.ts';
import { MeasureField } from '../../control/MeasureField.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';

const SIDES: readonly FaceSide[] = ['width', 'height'];

interface FaceSectionProps {
  readonly bed: Bed;
  readonly onPropose: (next: Bed, label: string) => void;
}

/** The face as it is measured with the bed up; the room around the mattress follows. */
export function FaceSection({ bed, onPropose }: FaceSectionProps) {
  const t = useWords();
  const { design, face } = useSettled();
  const room = (mm: number) => lengthText(design, mm);
  return (
    <section>
      <h3 className="section-title">{t('title.face')}</h3>
      <div className="fields">
        {SIDES.map((side) => (
          <MeasureField
            key={side}
            label={t(`bed.face.${side}`)}
            min={leastFace(bed, side)}
            value={face[side]}
            onCommit={(mm) => onPropose(withFace(bed, side, mm), t(`bed.face.${side}`))}
          />
        ))}
      </div>
      <p className="note">
        <Typeset
          text={t('bed.face.room', {
            across: room(bed.allowance.width),
            along: room(bed.allowance.length),
          })}
        />
      </p>
    </section>
  );
}
