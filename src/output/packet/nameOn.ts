import type { DrawItem } from '../../drawing/drawing.ts';
import { text } from '../../drawing/items.ts';
import { TEXT } from '../../drawing/style.ts';
import { textWidth } from '../../drawing/text.ts';
import { boxesMeet, containsPointInRegion, nearIn } from '../../geometry/region.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { Deg, Mm } from '../../measure/units.ts';
import { labelBox } from './faceView.ts';

/** Shares of a box at which a name is tried, the middle first. */
const SPOTS = [0.5, 0.3, 0.7, 0.12, 0.88, 0.04, 0.96] as const;

/** Does a small box lie within a region, of which this is near it? Looked at on its border and along its middle. */
function within(near: Region, box: Box): boolean {
  const shares = [0, 0.2, 0.4, 0.6, 0.8, 1];
  const [across, up] = box.w > box.h ? [shares, [0, 0.5, 1]] : [[0, 0.5, 1], shares];
  return across.every((u) =>
    up.every((v) => containsPointInRegion(near, { x: box.x + u * box.w, y: box.y + v * box.h })),
  );
}

/** A box and which way what stands in it is read. */
export interface Spot {
  readonly middle: Point;
  readonly angle: Deg;
  readonly box: Box;
}

/** The first place for something of this size, read along the longer side of the region or across it, clear of others. */
export function spotIn(region: Region, size: { w: Mm; h: Mm }, taken: readonly Box[]): Spot | null {
  const whole = labelBox(region);
  if (!whole) return null;
  const turns = whole.h > whole.w ? [90, 0] : [0, 90];
  const near = nearIn(region);
  for (const angle of turns) {
    const [w, h] = angle === 90 ? [size.h, size.w] : [size.w, size.h];
    if (w > whole.w || h > whole.h) continue;
    for (const v of SPOTS) {
      for (const u of SPOTS) {
        const box = { x: whole.x + u * (whole.w - w), y: whole.y + v * (whole.h - h), w, h };
        if (taken.some((other) => boxesMeet(other, box)) || !within(near([box]), box)) continue;
        return { middle: { x: box.x + w / 2, y: box.y + h / 2 }, angle, box };
      }
    }
  }
  return null;
}

/** A text with its middle at a point. */
export function centered(
  { middle, angle }: Pick<Spot, 'middle' | 'angle'>,
  words: string,
  size: Mm,
): DrawItem {
  const drop = size * 0.36;
  const at = angle === 90 ? { x: middle.x + drop, y: middle.y } : { x: middle.x, y: middle.y - drop };
  return text(at, words, { size, anchor: 'middle', angle });
}

/** The first place of a name on what is seen of its part, in the largest type that fits, clear of other names. */
export function nameOn(
  region: Region,
  name: string,
  taken: readonly Box[],
): { item: DrawItem; box: Box } | null {
  for (const size of [TEXT.small, TEXT.note]) {
    const spot = spotIn(region, { w: textWidth(name, { size }) + 1, h: size * 1.1 }, taken);
    if (spot) return { item: centered(spot, name, size), box: spot.box };
  }
  return null;
}
