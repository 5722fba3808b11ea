import type { DrawItem } from '../drawing/drawing.ts';
import { lines, rectangle } from '../drawing/items.ts';
import { INK, WEIGHT } from '../drawing/style.ts';
import type { Box, Point } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';

/** A box filled with slanted lines, `step` apart along its lower edge. */
export function hatched(box: Box, step: Mm): DrawItem[] {
  const pairs: [Point, Point][] = [];
  for (let s = step; s < box.w + box.h; s += step) {
    // The line x + y = s through the box, from its lower right to its upper left end.
    const low = { x: box.x + Math.min(s, box.w), y: box.y + Math.max(0, s - box.w) };
    const high = { x: box.x + Math.max(0, s - box.h), y: box.y + Math.min(s, box.h) };
    pairs.push([low, high]);
  }
  return [
    rectangle(box, { fill: INK.paper }),
    lines(pairs, { stroke: INK.faint, width: WEIGHT.hair }),
    rectangle(box, { stroke: INK.soft, width: WEIGHT.thin, dash: [1.2, 0.8] }),
  ];
}
