import type { KeepClear } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { TextField } from '../../control/TextField.tsx';
import { useCommit } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

export function KeepClearFields({ keep }: { keep: KeepClear }) {
  const t = useWords();
  const commit = useCommit();
  const change = (fields: Partial<KeepClear>) =>
    commit(
      [{ kind: 'replace', list: 'keepClears', id: keep.id, item: { ...keep, ...fields } }],
      t('did.change', { name: keep.name }),
    );
  const sides = [
    { side: 'x', words: 'part.left', min: -10_000 },
    { side: 'y', words: 'part.bottom', min: -10_000 },
    { side: 'w', words: 'part.width', min: 1 },
    { side: 'h', words: 'part.height', min: 1 },
  ] as const;
  return (
    <div className="fields">
      <div className="wide">
        <TextField label={t('part.name')} value={keep.name} onCommit={(name) => change({ name })} />
      </div>
      <ChoiceField
        label={t('keep.why')}
        value={keep.why}
        choices={(['hinge', 'leg', 'latch', 'handle', 'other'] as const).map((value) => ({
          value,
          label: t(`why.${value}`),
        }))}
        onCommit={(why) => change({ why })}
      />
      <MeasureField
        label={t('keep.height')}
        hint={t('keep.heightHint')}
        value={keep.height}
        onCommit={(height) => change({ height })}
      />
      {sides.map(({ side, words, min }) => (
        <MeasureField
          key={side}
          label={t(words)}
          min={min}
          value={keep.box[side]}
          onCommit={(mm) => change({ box: { ...keep.box, [side]: mm } })}
        />
      ))}
    </div>
  );
}
