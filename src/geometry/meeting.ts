import type { Mm } from '../measure/units.ts';
import { grownBox } from './box.ts';
import { boxesMeet } from './region.ts';
import type { Box } from './shape.ts';

/** A box by its place in the list. */
interface Numbered {
  readonly box: Box;
  readonly i: number;
}

/** Whether two boxes, by their places, have nothing to do with each other wherever they lie. */
type Apart = (i: number, j: number) => boolean;

/**
 * Pairs of boxes that overlap or touch, found by a sweep from left to right: each by the places of its boxes in the
 * list, the earlier first, and the pairs in that order; without those that are apart.
 */
export function meetingPairs(boxes: readonly (Box | null)[], apart?: Apart): [number, number][] {
  const order = boxes
    .flatMap((box, i): Numbered[] => (box ? [{ box, i }] : []))
    .sort((a, b) => a.box.x - b.box.x || a.i - b.i);
  const pairs: [number, number][] = [];
  const open: Numbered[] = [];
  for (const { box, i } of order) {
    // A hair more than touching is kept open; whether two meet is for `boxesMeet` alone to say.
    let kept = 0;
    for (const other of open) {
      if (other.box.x + other.box.w < box.x - HAIR) continue;
      open[kept++] = other;
      if (boxesMeet(other.box, box) && !apart?.(i, other.i))
        pairs.push(i < other.i ? [i, other.i] : [other.i, i]);
    }
    open.length = kept;
    open.push({ box, i });
  }
  return pairs.sort((p, q) => p[0] - q[0] || p[1] - q[1]);
}

const HAIR: Mm = 1;

/** For each box, by place the boxes that come as close to it as `within`, in rising order; without those that are apart. */
export function neighborsOf(boxes: readonly (Box | null)[], within: Mm = 0, apart?: Apart): number[][] {
  const grown = within === 0 ? boxes : boxes.map((box) => box && grownBox(box, within / 2));
  const found: number[][] = boxes.map(() => []);
  for (const [i, j] of meetingPairs(grown, apart)) {
    found[i]?.push(j);
    found[j]?.push(i);
  }
  return found;
}
