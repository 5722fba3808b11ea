import { Plus } from 'lucide-react';
import { newFinish } from '../../../design/defaults.ts';
import { finishesIn } from '../../../design/look.ts';
import { isBoards, isLettered, isMany } from '../../../design/made.ts';
import type { Design, Part } from '../../../design/schema.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { freeId, freeName } from '../../edit/ids.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';
import { FinishItem } from './FinishItem.tsx';

const FIELDS: readonly FormField<Design['paint']>[] = [
  { is: 'share', label: 'paint.waste', field: 'waste', max: 100 },
  {
    is: 'choice',
    label: 'paint.containers',
    field: 'containers',
    of: named('paint.containers', ['us', 'metric']),
  },
  { is: 'switch', label: 'paint.backPriming', hint: 'paint.backHint', field: 'backPriming', place: 'wide' },
];

/** The finishes of the design, each with all that decides how much of it is bought. */
export function Finishes() {
  const t = useWords();
  const design = useSettledDesign();
  const { add, set } = useChange();
  const put = (fields: Partial<Design['paint']>) =>
    set('paint', { ...design.paint, ...fields }, t('paint.setting'));
  const addFinish = () => {
    const name = freeName(design.finishes, t('finish.new'));
    add('finishes', newFinish(freeId(design, 'finish'), name, '#7d8f88'), name);
  };
  return (
    <>
      <Section id="paint-finishes" title="paint.finishes">
        <ul className="item-list">
          {design.finishes.map((finish) => (
            <FinishItem
              key={finish.id}
              finish={finish}
              design={design}
              wearers={design.parts.filter((p) => wears(p, finish.id)).length}
            />
          ))}
        </ul>
        <Button icon={Plus} onClick={addFinish}>
          {t('finish.add')}
        </Button>
      </Section>
      <Section id="paint-setting" title="paint.setting">
        <FieldGrid of={FIELDS} value={design.paint} onChange={put} />
      </Section>
    </>
  );
}

/** A part wears a finish on its wood, on its letters, or on one of its members. */
function wears(part: Part, finish: string): boolean {
  if (part.finish === finish) return true;
  if (isMany(part)) {
    return part.member.finish === finish || Object.values(part.overrides).some((o) => o.finish === finish);
  }
  if (isBoards(part)) {
    const { pattern, overrides } = part;
    const joints = pattern.form === 'courses' ? pattern.joints?.finish : undefined;
    return joints === finish || Object.values(overrides).some((o) => o.finish === finish);
  }
  return isLettered(part) && finishesIn(part.lettering).includes(finish);
}
