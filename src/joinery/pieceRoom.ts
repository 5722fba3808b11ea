import type { DrawItem, TextItem } from '../drawing/drawing.ts';
import { boxOfPath } from '../geometry/path.ts';
import { boxesMeet } from '../geometry/region.ts';
import type { Box } from '../geometry/shape.ts';
import { textWidth } from './pieceView.ts';

/** Whether a figure there covers nothing that is drawn. */
export const isFree = (box: Box, taken: readonly Box[]): boolean =>
  !taken.some((other) => boxesMeet(box, other));

/** Room that something drawn takes. */
export function boxesOf(item: DrawItem): Box[] {
  if (item.kind === 'path') return item.path.length === 0 ? [] : [boxOfPath(item.path)];
  return item.kind === 'text' ? [boxOfText(item)] : [];
}

/** Room of a figure, by the generous width of drawings of pieces; of one at a slant the square that holds it. */
function boxOfText({ at, size, text: words, anchor, angle = 0 }: TextItem): Box {
  const w = textWidth(words, size);
  const h = size * 0.75;
  const x = at.x - (anchor === 'middle' ? w / 2 : anchor === 'end' ? w : 0);
  if (angle === 0) return { x, y: at.y, w, h };
  return {
    x: at.x - (angle % 90 === 0 ? h : w / 2),
    y: at.y - w / 2,
    w: angle % 90 === 0 ? h * 1.5 : w,
    h: w,
  };
}
