import { useState } from 'react';
import { boxIn } from '../../../layout/boxIn.ts';
import { inches, type Mm } from '../../../measure/units.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { editsToRepeat, type Repeatable } from '../../edit/member.ts';
import { useCommit, useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

interface Repeat {
  readonly columns: number;
  readonly rows: number;
  readonly gap: Mm;
}

const FIELDS: readonly FormField<Repeat>[] = [
  { is: 'number', label: 'repeat.columns', field: 'columns', whole: true, min: 1, max: 100 },
  { is: 'number', label: 'repeat.rows', field: 'rows', whole: true, min: 1, max: 100 },
  { is: 'length', label: 'rule.gap', field: 'gap' },
];

/** Makes an array of a part: with its stock, finish and size, to the right, up, or both. */
export function RepeatSection({ part }: { part: Repeatable }) {
  const t = useWords();
  const { design, layout } = useSettled();
  const commit = useCommit();
  const across = part.kind === 'strip' && part.lie === 'across';
  const [repeat, setRepeat] = useState<Repeat>({
    columns: across ? 1 : 3,
    rows: across ? 3 : 1,
    gap: inches(2),
  });
  const apply = () => {
    const box = boxIn(layout.boxes, part);
    const edits = editsToRepeat(design, part, box, repeat);
    if (edits.length > 0)
      commit(edits, t('did.repeat', { name: part.name }), { selection: [part.id], held: new Set([part.id]) });
  };
  return (
    <details className="fold">
      <summary className="section-title">{t('repeat.title')}</summary>
      <p className="note">{t('repeat.lead')}</p>
      <FieldGrid of={FIELDS} value={repeat} onChange={(fields) => setRepeat({ ...repeat, ...fields })} />
      <div className="btn-row">
        <Button disabled={part.locked || repeat.columns * repeat.rows < 2} onClick={apply}>
          {t('repeat.do')}
        </Button>
      </div>
    </details>
  );
}
