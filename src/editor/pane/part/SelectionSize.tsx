import { boxAround } from '../../../geometry/box.ts';
import { MeasureField } from '../../control/MeasureField.tsx';
import { movableBoxes } from '../../edit/movable.ts';
import { sizeSelection } from '../../edit/sizeSelection.ts';
import { useSelection, useShown, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

/** The width and height of all that is selected together. */
export function SelectionSize() {
  const t = useWords();
  const { design, layout } = useShown();
  const store = useStore();
  const boxes = movableBoxes(design, layout.boxes, useSelection());
  const box = boxAround(boxes.values());
  if (!box || boxes.size < 2) return null;
  return (
    <div className="fields">
      <MeasureField
        label={t('part.widthOfAll')}
        min={1}
        value={box.w}
        onCommit={(size) => sizeSelection(store, [{ axis: 'x', size, keep: 'low' }])}
      />
      <MeasureField
        label={t('part.heightOfAll')}
        min={1}
        value={box.h}
        onCommit={(size) => sizeSelection(store, [{ axis: 'y', size, keep: 'low' }])}
      />
    </div>
  );
}
