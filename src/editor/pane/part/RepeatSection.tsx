import { useState } from 'react';
import { inches } from '../../../measure/units.ts';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { editsToRepeat, type Repeatable } from '../../edit/member.ts';
import { useCommit, useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

/** Makes an array of a part: with its stock, finish and size, to the right, up, or both. */
export function RepeatSection({ part }: { part: Repeatable }) {
  const t = useWords();
  const { design, layout } = useSettled();
  const commit = useCommit();
  const [columns, setColumns] = useState(part.kind === 'strip' && part.lie === 'across' ? 1 : 3);
  const [rows, setRows] = useState(part.kind === 'strip' && part.lie === 'across' ? 3 : 1);
  const [gap, setGap] = useState(inches(2));
  const apply = () => {
    const box = layout.boxes.get(part.id) ?? part.box;
    const edits = editsToRepeat(design, part, box, { columns, rows, gap });
    if (edits.length > 0)
      commit(edits, t('did.repeat', { name: part.name }), { selection: [part.id], held: new Set([part.id]) });
  };
  return (
    <details className="fold">
      <summary className="section-title">{t('repeat.title')}</summary>
      <p className="note">{t('repeat.lead')}</p>
      <div className="fields">
        <NumberField
          label={t('repeat.columns')}
          whole
          min={1}
          max={100}
          value={columns}
          onCommit={setColumns}
        />
        <NumberField label={t('repeat.rows')} whole min={1} max={100} value={rows} onCommit={setRows} />
        <MeasureField label={t('repeat.gap')} value={gap} onCommit={setGap} />
      </div>
      <div className="btn-row">
        <button type="button" className="btn" disabled={part.locked || columns * rows < 2} onClick={apply}>
          {t('repeat.do')}
        </button>
      </div>
    </details>
  );
}
