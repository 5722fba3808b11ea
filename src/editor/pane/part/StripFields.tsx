import type { Strip } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { useDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { EndFields } from './EndFields.tsx';
import { usePart } from './usePart.ts';

const LIES: readonly Strip['lie'][] = ['across', 'up', 'rising', 'falling', 'turned'];

export function StripFields({ part }: { part: Strip }) {
  const t = useWords();
  const design = useDesign();
  const { box, change } = usePart(part);
  /** A strip that lies the other way keeps its length and its middle. */
  const lay = (lie: Strip['lie']) => {
    const length = part.lie === 'up' ? box.h : part.lie === 'across' ? box.w : part.length;
    const narrow = Math.min(box.w, box.h);
    const cx = box.x + box.w / 2;
    const cy = box.y + box.h / 2;
    if (lie === 'across')
      change({ lie, length, box: { x: cx - length / 2, y: cy - narrow / 2, w: length, h: narrow } });
    else if (lie === 'up')
      change({ lie, length, box: { x: cx - narrow / 2, y: cy - length / 2, w: narrow, h: length } });
    else change({ lie, length, angle: lie === 'turned' && part.angle === 0 ? 45 : part.angle });
  };
  return (
    <div className="fields">
      <div className="wide">
        <ChoiceField
          label={t('part.stock')}
          value={part.stock}
          choices={stockChoices(design, ['flat', 'shaped'], part.stock)}
          onCommit={(stock) => change({ stock })}
        />
      </div>
      <ChoiceField
        label={t('strip.lie')}
        value={part.lie}
        choices={LIES.map((value) => ({ value, label: t(`lie.${value}`) }))}
        onCommit={lay}
      />
      {part.lie === 'turned' ? (
        <>
          <NumberField
            label={t('strip.angle')}
            unit="°"
            min={-180}
            max={180}
            value={part.angle}
            onCommit={(angle) => change({ angle })}
          />
          <MeasureField
            label={t('strip.length')}
            min={1}
            value={part.length}
            onCommit={(length) => change({ length })}
          />
        </>
      ) : null}
      <EndFields ends={part.ends} onCommit={(ends) => change({ ends })} />
      <SwitchField label={t('strip.onEdge')} value={part.onEdge} onCommit={(onEdge) => change({ onEdge })} />
      <SwitchField label={t('strip.fit')} value={part.fit} onCommit={(fit) => change({ fit })} />
    </div>
  );
}
