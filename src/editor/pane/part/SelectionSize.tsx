import { boxAround } from '../../../geometry/box.ts';
import type { Box } from '../../../geometry/shape.ts';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { movableBoxes } from '../../edit/movable.ts';
import type { Sizing } from '../../edit/resizeSelection.ts';
import { sizeSelection } from '../../edit/sizeSelection.ts';
import { useSelection, useShown, useStore } from '../../state/hooks.ts';

const FIELDS: readonly FormField<Box, Sizing>[] = [
  {
    is: 'length',
    label: 'part.widthOfAll',
    min: 1,
    get: ({ w }) => w,
    put: (size) => ({ axis: 'x', size, keep: 'low' }),
  },
  {
    is: 'length',
    label: 'part.heightOfAll',
    min: 1,
    get: ({ h }) => h,
    put: (size) => ({ axis: 'y', size, keep: 'low' }),
  },
];

/** The width and height of all that is selected together. */
export function SelectionSize() {
  const { design, layout } = useShown();
  const store = useStore();
  const boxes = movableBoxes(design, layout.boxes, useSelection());
  const box = boxAround(boxes.values());
  if (!box || boxes.size < 2) return null;
  return (
    <div className="fields">
      <Fields of={FIELDS} value={box} onChange={(sizing) => sizeSelection(store, [sizing])} />
    </div>
  );
}
