import { DUST } from '../geometry/tolerance.ts';
import { at } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';

/**
 * Places for labels, in the order of the marks they belong to, at least `pitch` apart, between `low` and
 * `high`, each as near its mark as its neighbors allow: labels too near are pushed apart as one block about
 * the middle of their marks. When there is no room for all, the pitch shrinks.
 */
export function spreadOut(marks: readonly Mm[], pitch: Mm, low: Mm, high: Mm): Mm[] {
  const room = Math.max(0, high - low);
  const step = marks.length > 1 ? Math.min(pitch, room / (marks.length - 1)) : pitch;
  interface Block {
    first: number;
    count: number;
    start: Mm;
  }
  const blocks: Block[] = [];
  const placed = (first: number, count: number): Block => {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += at(marks, first + i) - i * step;
    const start = Math.min(Math.max(sum / count, low), Math.max(low, high - (count - 1) * step));
    return { first, count, start };
  };
  for (let i = 0; i < marks.length; i++) {
    let block = placed(i, 1);
    for (let last = blocks.pop(); last; last = blocks.pop()) {
      if (last.start + last.count * step <= block.start + DUST) {
        blocks.push(last);
        break;
      }
      block = placed(last.first, last.count + block.count);
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ count, start }) => Array.from({ length: count }, (_, i) => start + i * step));
}
