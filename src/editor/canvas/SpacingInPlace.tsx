import { replacing } from '../../design/edit/make.ts';
import type { Axis, PartArray, Spacing } from '../../design/schema.ts';
import { MeasureField } from '../control/MeasureField.tsx';
import { NumberField } from '../control/NumberField.tsx';
import { commit } from '../state/commit.ts';
import { useStore } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { lengthText } from '../words/text.ts';

interface SpacingInPlaceProps {
  readonly array: PartArray;
  readonly axis: Axis;
  readonly onDone: () => void;
}

/** What decides the gaps of an array along an axis: the pitch, the largest gap, or how many there are. */
export function SpacingInPlace({ array, axis, onDone }: SpacingInPlaceProps) {
  const t = useWords();
  const store = useStore();
  const spacing = axis === 'x' ? array.across : array.up;
  if (!spacing) return null;
  const take = (next: Spacing, to: string) => {
    const item = axis === 'x' ? { ...array, across: next } : { ...array, up: next };
    commit(store, [replacing('parts', item)], t('did.measure', { to }), {
      held: new Set([array.id]),
    });
  };
  const length = (mm: number) => lengthText(store.getState().edit.design, mm);
  const common = { autoFocus: true, min: 1, onDone };
  if (spacing.mode === 'centers')
    return (
      <MeasureField
        {...common}
        label={t('array.pitch')}
        value={spacing.pitch ?? 0}
        onCommit={(pitch) => take({ ...spacing, pitch }, length(pitch))}
      />
    );
  if (spacing.mode === 'most')
    return (
      <MeasureField
        {...common}
        label={t('array.most')}
        value={spacing.most ?? 0}
        onCommit={(most) => take({ ...spacing, most }, length(most))}
      />
    );
  return (
    <NumberField
      {...common}
      label={t('array.count')}
      whole
      max={400}
      value={spacing.count}
      onCommit={(count) => take({ ...spacing, count }, String(count))}
    />
  );
}
