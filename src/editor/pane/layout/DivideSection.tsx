import { useState } from 'react';
import type { Edge } from '../../../design/schema.ts';
import { divide } from '../../../layout/arrange/divide.ts';
import { arrangingOf, editsToArrange } from '../../action/arrange.ts';
import { ChoiceField } from '../../field/ChoiceField.tsx';
import { NumberField } from '../../field/NumberField.tsx';
import { SwitchField } from '../../field/SwitchField.tsx';
import { useCommit, useFace, useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { BARE, finishChoices, stockChoices } from '../part/choices.ts';
import { referenceName } from '../part/sentence.ts';

const SQUARE = { start: { cut: 'square' }, end: { cut: 'square' } } as const;

/** Divides a space into columns and rows by strips that stay evenly spread when the space changes. */
export function DivideSection() {
  const t = useWords();
  const design = useSettledDesign();
  const face = useFace();
  const commit = useCommit();
  const innermost = face.levels.at(-1)?.id ?? 'rim';
  const [space, setSpace] = useState({ left: '', right: '', bottom: '', top: '' });
  const [columns, setColumns] = useState(2);
  const [rows, setRows] = useState(3);
  const [framed, setFramed] = useState(true);
  const [through, setThrough] = useState<'up' | 'across' | 'lap'>('up');
  const [upright, setUpright] = useState('pine-1x3');
  const [across, setAcross] = useState('pine-1x3');
  const [finish, setFinish] = useState(design.finishes[1]?.id ?? BARE);

  const things = [
    'face',
    ...face.levels.map((l) => `level:${l.id}`),
    ...design.parts.filter((p) => p.kind !== 'fitting').map((p) => p.id),
  ];
  const named = things.map((value) => ({ value, label: referenceName(design, value) }));
  const of = (side: keyof typeof space) =>
    things.includes(space[side]) ? space[side] : `level:${innermost}`;
  /** A level's or a frame's own edges; of a part beside the space, the edge that faces it. */
  const edge = (side: keyof typeof space): Edge => {
    const name = of(side);
    const low = side === 'left' || side === 'bottom';
    const beside = design.parts.some((p) => p.id === name) && of(opposite[side]) !== name;
    return { of: name, side: low === beside ? 'high' : 'low' };
  };

  const apply = () => {
    const arranged = divide(arrangingOf(design), {
      left: edge('left'),
      right: edge('right'),
      bottom: edge('bottom'),
      top: edge('top'),
      columns,
      rows,
      framed,
      through,
      upright,
      across,
      names: { upright: t('divide.upright'), across: t('divide.rail') },
      like: {
        on: 'face',
        finish: finish === BARE ? null : finish,
        fixing: { how: 'brads', glue: true },
        onEdge: false,
        ends: SQUARE,
        fit: false,
        locked: false,
      },
    });
    const edits = editsToArrange(design, arranged);
    if (edits.length === 0) return;
    commit(edits, t('did.divide', { name: referenceName(design, of('left')) }), {
      selection: arranged.add.map((p) => p.id),
    });
  };

  return (
    <details className="fold">
      <summary className="section-title">{t('divide.title')}</summary>
      <p className="note">{t('divide.lead')}</p>
      <div className="fields">
        {(['left', 'right', 'bottom', 'top'] as const).map((side) => (
          <ChoiceField
            key={side}
            label={t(`divide.${side}`)}
            value={of(side)}
            choices={named}
            onCommit={(value) => setSpace({ ...space, [side]: value })}
          />
        ))}
        <NumberField
          label={t('divide.columns')}
          whole
          min={1}
          max={40}
          value={columns}
          onCommit={setColumns}
        />
        <NumberField label={t('divide.rows')} whole min={1} max={40} value={rows} onCommit={setRows} />
        <ChoiceField
          label={t('divide.uprights')}
          value={upright}
          choices={stockChoices(design, ['flat', 'shaped'], upright)}
          onCommit={setUpright}
        />
        <ChoiceField
          label={t('divide.rails')}
          value={across}
          choices={stockChoices(design, ['flat', 'shaped'], across)}
          onCommit={setAcross}
        />
        <ChoiceField
          label={t('divide.through')}
          value={through}
          choices={(['up', 'across', 'lap'] as const).map((value) => ({
            value,
            label: t(`through.${value}`),
          }))}
          onCommit={setThrough}
        />
        <ChoiceField
          label={t('part.finish')}
          value={finish}
          choices={finishChoices(design)}
          onCommit={setFinish}
        />
        <div className="wide">
          <SwitchField label={t('divide.framed')} value={framed} onCommit={setFramed} />
        </div>
      </div>
      <div className="btn-row">
        <button type="button" className="btn main" onClick={apply}>
          {t('divide.do')}
        </button>
      </div>
    </details>
  );
}

const opposite = { left: 'right', right: 'left', bottom: 'top', top: 'bottom' } as const;
