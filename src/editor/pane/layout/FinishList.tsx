import { Plus } from 'lucide-react';
import { newFinish } from '../../../design/defaults.ts';
import { Button } from '../../control/Button.tsx';
import { ColorField } from '../../control/ColorField.tsx';
import { Section } from '../../control/Section.tsx';
import { freeId, freeName } from '../../edit/ids.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';

/** Colors of the design; the rest of a finish stands in the paint step. */
export function FinishList() {
  const t = useWords();
  const design = useSettledDesign();
  const { add, replace } = useChange();
  const addFinish = () => {
    const name = freeName(design.finishes, t('finish.new'));
    add('finishes', newFinish(freeId(design, 'finish'), name, '#7d8f88'), name);
  };
  return (
    <Section title="finish.title">
      <ul className="finishes">
        {design.finishes.map((f) => (
          <li key={f.id}>
            <ColorField
              label={f.name}
              value={f.color}
              onCommit={(color) => replace('finishes', { ...f, color }, f.name, `color:${f.id}`)}
            />
          </li>
        ))}
      </ul>
      <Button icon={Plus} onClick={addFinish}>
        {t('finish.add')}
      </Button>
    </Section>
  );
}
