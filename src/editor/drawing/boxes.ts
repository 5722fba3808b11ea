import type { Design } from '../../design/schema.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Layout } from '../../layout/laid.ts';
import { itemsOf, movableBoxes } from '../edit/movable.ts';

/** One box for each selected part, keep-clear or group, as laid out. */
export function boxesOf(design: Design, layout: Layout, selection: readonly string[]): Box[] {
  return selection.flatMap((id) => {
    const boxes = itemsOf(design, [id]).flatMap(
      (item) => layout.boxes.get(item) ?? design.keepClears.find((k) => k.id === item)?.box ?? [],
    );
    return boxAround(boxes) ?? [];
  });
}

/** Around several selected parts that may be sized together; null for fewer. */
export function movableAround(design: Design, layout: Layout, selection: readonly string[]): Box | null {
  const boxes = movableBoxes(design, layout.boxes, selection);
  return boxes.size > 1 ? boxAround(boxes.values()) : null;
}
