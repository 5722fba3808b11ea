import type { TextItem } from '../drawing/drawing.ts';
import { textWidth } from '../drawing/text.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';

/** Between two labels. */
const GAP: Mm = 0.8;

/**
 * Labels in a row, each centered on its place, moved as far as it takes to keep them apart: to the right past
 * the one before, and back from the row's end where they would run over it.
 */
export function parted(labels: readonly TextItem[], end: Mm): TextItem[] {
  const sorted = [...labels].sort((a, b) => a.at.x - b.at.x);
  const half = sorted.map((label) => textWidth(label.text, label) / 2);
  const at: Mm[] = [];
  let free = -Infinity;
  sorted.forEach((label, i) => {
    const h = pick(half, i);
    at.push(Math.max(label.at.x, free + h));
    free = pick(at, i) + h + GAP;
  });
  let room = Math.max(end, ...sorted.map((label, i) => label.at.x + pick(half, i)));
  for (let i = at.length - 1; i >= 0; i--) {
    const h = pick(half, i);
    at[i] = Math.min(pick(at, i), room - h);
    room = pick(at, i) - h - GAP;
  }
  return sorted.map((label, i) => ({ ...label, at: { x: pick(at, i), y: label.at.y } }));
}
