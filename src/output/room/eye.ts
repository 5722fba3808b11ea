import type { DrawItem, ImageItem } from '../../drawing/drawing.ts';
import { pathOfRings, transformPath } from '../../geometry/path.ts';
import { distance } from '../../geometry/point.ts';
import type { Path, Point } from '../../geometry/shape.ts';
import { keptBy } from '../../list/keptBy.ts';
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
  // One path may fill, clip and line.
  const through = keptBy((path: Path) => transformPath(path, map));
  const moved = (item: DrawItem): DrawItem[] => {
    if (item.kind === 'path') {
      const fade = item.fade && { ...item.fade, from: map(item.fade.from), to: map(item.fade.to) };
      return [{ ...item, fade, path: through(item.path) }];
    }
    if (item.kind === 'text') return [];
    if (item.kind === 'image') return imageThrough(item, map);
    return [{ ...item, ...(item.clip && { clip: through(item.clip) }), items: item.items.flatMap(moved) }];
  };
  return items.flatMap(moved);
}

/** A picture that is seen at a slant is drawn in so many rows and columns, each of them as if it were seen squarely. */
const CELLS = 12;
/** A fourth corner closer than this to where three of them put it is there: no slant that any file tells. */
const SQUARE: Mm = 1e-6;

/** A picture of pixels moved by a map: outputs know parallelograms only, and a slant makes none. */
function imageThrough({ raster, corners }: ImageItem, map: (p: Point) => Point): DrawItem[] {
  const [low, right, up] = corners;
  /** A place of the picture, in shares of its width and height. */
  const at = (u: number, v: number): Point =>
    map({
      x: low.x + u * (right.x - low.x) + v * (up.x - low.x),
      y: low.y + u * (right.y - low.y) + v * (up.y - low.y),
    });
  const [a, b, c, d] = [at(0, 0), at(1, 0), at(0, 1), at(1, 1)];
  if (distance(d, { x: b.x + c.x - a.x, y: b.y + c.y - a.y }) < SQUARE)
    return [{ kind: 'image', raster, corners: [a, b, c] }];
  const share = (i: number) => Math.min(i, CELLS) / CELLS;
  return Array.from({ length: CELLS * CELLS }, (_, i): DrawItem => {
    const [column, row] = [i % CELLS, Math.floor(i / CELLS)];
    const [p, q, r] = [
      at(share(column), share(row)),
      at(share(column + 1), share(row)),
      at(share(column), share(row + 1)),
    ];
    /** Where the whole picture would lie if all of it were as this cell is. */
    const whole = (u: number, v: number): Point => ({
      x: p.x + CELLS * ((u - share(column)) * (q.x - p.x) + (v - share(row)) * (r.x - p.x)),
      y: p.y + CELLS * ((u - share(column)) * (q.y - p.y) + (v - share(row)) * (r.y - p.y)),
    });
    // Each runs on under the next ones: no seam shows between them.
    const [u0, v0, u1, v1] = [share(column), share(row), share(column + 2), share(row + 2)];
    return {
      kind: 'group',
      clip: pathOfRings([[at(u0, v0), at(u1, v0), at(u1, v1), at(u0, v1)]]),
      items: [{ kind: 'image', raster, corners: [whole(0, 0), whole(1, 0), whole(0, 1)] }],
    };
  });
}
