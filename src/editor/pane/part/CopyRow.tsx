import { useState } from 'react';
import type { Axis } from '../../../design/schema.ts';
import type { Arranged, Arranging } from '../../../layout/arrange/arranged.ts';
import { copyByRule } from '../../../layout/arrange/copy.ts';
import { inches } from '../../../measure/units.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { useWords } from '../../words/t.ts';

interface CopyRowProps {
  readonly ids: readonly string[];
  readonly onApply: (make: (on: Arranging) => Arranged) => void;
}

const WAYS = ['right', 'left', 'up', 'down'] as const;

/** Copies in a row, each held at the same gap from the one before. */
export function CopyRow({ ids, onApply }: CopyRowProps) {
  const t = useWords();
  const [way, setWay] = useState<(typeof WAYS)[number]>('right');
  const [gap, setGap] = useState(inches(2));
  const [count, setCount] = useState(1);
  const axis: Axis = way === 'right' || way === 'left' ? 'x' : 'y';
  const sign = way === 'left' || way === 'down' ? -1 : 1;
  return (
    <fieldset className="sub">
      <legend>{t('copy.title')}</legend>
      <div className="fields">
        <ChoiceField
          label={t('copy.way')}
          value={way}
          choices={WAYS.map((value) => ({ value, label: t(`way.${value}`) }))}
          onCommit={setWay}
        />
        <MeasureField label={t('copy.gap')} min={0.1} value={gap} onCommit={setGap} />
        <NumberField label={t('copy.count')} whole min={1} max={50} value={count} onCommit={setCount} />
      </div>
      <div className="btn-row">
        <button
          type="button"
          className="btn"
          onClick={() => onApply((on) => copyByRule(on, ids, { axis, gap: sign * gap, count }))}
        >
          {t('copy.do')}
        </button>
      </div>
    </fieldset>
  );
}
