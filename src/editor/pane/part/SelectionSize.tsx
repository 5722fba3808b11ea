import type { Axis } from '../../../design/schema.ts';
import { boxAround } from '../../../geometry/box.ts';
import type { Box } from '../../../geometry/shape.ts';
import { sizeOf } from '../../../layout/span.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { movableBoxes } from '../../edit/movable.ts';
import type { Sizing } from '../../edit/resizeSelection.ts';
import { sizeSelection } from '../../edit/sizeSelection.ts';
import { useSelection, useShown, useStore } from '../../state/hooks.ts';
import type { WordKey } from '../../words/t.ts';

const sizeField = (label: WordKey, axis: Axis): FormField<Box, Sizing> => ({
  is: 'length',
  label,
  min: 1,
  get: (box) => sizeOf(box, axis),
  put: (size) => ({ axis, size, keep: 'low' }),
});

const FIELDS = [sizeField('part.widthOfAll', 'x'), sizeField('part.heightOfAll', 'y')];

/** The width and height of all that is selected together. */
export function SelectionSize() {
  const { design, layout } = useShown();
  const store = useStore();
  const boxes = movableBoxes(design, layout.boxes, useSelection());
  const box = boxAround(boxes.values());
  if (!box || boxes.size < 2) return null;
  return <FieldGrid of={FIELDS} value={box} onChange={(sizing) => sizeSelection(store, [sizing])} />;
}
