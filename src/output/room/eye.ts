import type { DrawItem } from '../../drawing/drawing.ts';
import { transformPath } from '../../geometry/path.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

/** A place in the room: across the wall, up from the floor, and out from the wall. */
export interface Place {
  readonly x: Mm;
  readonly y: Mm;
  readonly out: Mm;
}

/** Where someone stands who looks straight at the wall. */
export type Eye = Place;

/**
 * Where a place is seen, on the wall: a central projection from the eye, so that the wall itself is drawn in true size
 * and what stands out from it larger. Places must lie between the wall and the eye.
 */
export const seenFrom =
  (eye: Eye) =>
  ({ x, y, out }: Place): Point => {
    const k = eye.out / (eye.out - out);
    return { x: eye.x + (x - eye.x) * k, y: eye.y + (y - eye.y) * k };
  };

/** Items with every point of them moved by a map. Straight lines stay true; of curves their handles move alike. */
export function itemsThrough(items: readonly DrawItem[], map: (p: Point) => Point): DrawItem[] {
  return items.flatMap((item): DrawItem[] => {
    if (item.kind === 'path') {
      const fade = item.fade && { ...item.fade, from: map(item.fade.from), to: map(item.fade.to) };
      return [{ ...item, fade, path: transformPath(item.path, map) }];
    }
    if (item.kind === 'text') return [];
    const clip = item.clip && { clip: transformPath(item.clip, map) };
    return [{ ...item, ...clip, items: itemsThrough(item.items, map) }];
  });
}
