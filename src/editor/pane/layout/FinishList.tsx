import { Plus } from 'lucide-react';
import { newFinish } from '../../../design/defaults.ts';
import { inserting, replacing } from '../../../design/edit/make.ts';
import { Button } from '../../control/Button.tsx';
import { ColorField } from '../../control/ColorField.tsx';
import { Section } from '../../control/Section.tsx';
import { freeId, freeName } from '../../edit/ids.ts';
import { useCommit, useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

/** Colors of the design; the rest of a finish stands in the paint step. */
export function FinishList() {
  const t = useWords();
  const design = useSettledDesign();
  const commit = useCommit();
  const add = () => {
    const name = freeName(design.finishes, t('finish.new'));
    const item = newFinish(freeId(design, 'finish'), name, '#7d8f88');
    commit([inserting('finishes', item)], t('did.add', { name }));
  };
  return (
    <Section title="finish.title">
      <ul className="finishes">
        {design.finishes.map((f) => (
          <li key={f.id}>
            <ColorField
              label={f.name}
              value={f.color}
              onCommit={(color) =>
                commit([replacing('finishes', { ...f, color })], t('did.change', { name: f.name }), {
                  merge: `color:${f.id}`,
                })
              }
            />
          </li>
        ))}
      </ul>
      <Button icon={Plus} onClick={add}>
        {t('finish.add')}
      </Button>
    </Section>
  );
}
