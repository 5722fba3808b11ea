import type { Run } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { useDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { usePart } from './usePart.ts';

/** An own path begins as the frame it was. */
const SQUARE = [
  { u: 0, v: 0 },
  { u: 1, v: 0 },
  { u: 1, v: 1 },
  { u: 0, v: 1 },
];

export function RunFields({ part }: { part: Run }) {
  const t = useWords();
  const design = useDesign();
  const { box, change } = usePart(part);
  const { path } = part;
  return (
    <div className="fields">
      <div className="wide">
        <ChoiceField
          label={t('part.stock')}
          value={part.stock}
          choices={stockChoices(design, ['shaped', 'flat'], part.stock)}
          onCommit={(stock) => change({ stock })}
        />
      </div>
      <ChoiceField
        label={t('run.path')}
        value={path.form}
        choices={(['frame', 'arched', 'points'] as const).map((value) => ({
          value,
          label: t(`path.${value}`),
        }))}
        onCommit={(form) => {
          if (form === 'frame') change({ path: { form } });
          else if (form === 'arched') change({ path: { form, rise: box.w / 4, segments: 6 } });
          else if (path.form !== 'points') change({ path: { form, points: SQUARE, closed: true } });
        }}
      />
      <ChoiceField
        label={t('run.side')}
        value={part.side}
        choices={(['inside', 'outside'] as const).map((value) => ({ value, label: t(`side.${value}`) }))}
        onCommit={(side) => change({ side })}
      />
      {path.form === 'arched' ? (
        <>
          <MeasureField
            label={t('shape.rise')}
            min={1}
            value={path.rise}
            onCommit={(rise) => change({ path: { ...path, rise } })}
          />
          <NumberField
            label={t('run.segments')}
            whole
            min={2}
            max={48}
            value={path.segments}
            onCommit={(segments) => change({ path: { ...path, segments } })}
          />
        </>
      ) : null}
      <ChoiceField
        label={t('run.corner')}
        value={part.corner}
        choices={(['miter', 'butt-across', 'butt-up'] as const).map((value) => ({
          value,
          label: t(`corner.${value}`),
        }))}
        onCommit={(corner) => change({ corner })}
      />
      <SwitchField label={t('strip.fit')} value={part.fit} onCommit={(fit) => change({ fit })} />
    </div>
  );
}
