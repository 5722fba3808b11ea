import { grownBox } from '../geometry/box.ts';
import { boxesMeet } from '../geometry/region.ts';
import type { Box } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';

/**
 * Finds which boxes come as close as `within` to a given one of them, in rising order of index. Sorted by
 * their left edges, so that only boxes that begin before the given one ends are looked at.
 */
export function near(boxes: readonly (Box | null)[], within: Mm): (index: number) => number[] {
  const order = boxes
    .flatMap((box, i) => (box ? [{ box, i }] : []))
    .sort((a, b) => a.box.x - b.box.x || a.i - b.i);
  return (index) => {
    const box = boxes[index];
    if (!box) return [];
    const grown = grownBox(box, within);
    const found: number[] = [];
    for (const other of order) {
      if (other.box.x > grown.x + grown.w) break;
      if (other.i !== index && boxesMeet(grown, other.box)) found.push(other.i);
    }
    return found.sort((a, b) => a - b);
  };
}
