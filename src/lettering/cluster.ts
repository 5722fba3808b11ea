import { boxesMeet } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Point, Polygon, Region } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';

/**
 * Does polygon work letter by letter: polygons whose boxes, grown by `reach`, do not meet cannot touch each
 * other's result, and the sweep of polygon clipping takes far longer over a whole text than over its
 * letters one by one. `work` must not move or grow a polygon by more than `reach` to any side.
 */
export function letterByLetter(region: Region, reach: Mm, work: (letters: Region) => Region): Region {
  return inOrder(clustersOf(region, reach).flatMap(work));
}

/** Groups of polygons that can touch each other. */
export function clustersOf(region: Region, reach: Mm): Region[] {
  const boxes = region.map(({ outer }) => grown(boxOfPoints(outer), reach));
  const group = region.map((_, i) => i);
  const order = boxes.map((box, i) => ({ box, i })).sort((a, b) => a.box.x - b.box.x || a.i - b.i);
  const rootOf = (i: number): number => {
    let at = i;
    while (group[at] !== at) at = group[at] ?? at;
    return at;
  };
  order.forEach(({ box, i }, at) => {
    for (const other of order.slice(at + 1)) {
      if (other.box.x > box.x + box.w) break;
      if (boxesMeet(box, other.box)) group[rootOf(i)] = rootOf(other.i);
    }
  });
  const clusters = new Map<number, Polygon[]>();
  region.forEach((polygon, i) => {
    const root = rootOf(i);
    clusters.set(root, [...(clusters.get(root) ?? []), polygon]);
  });
  return [...clusters.values()];
}

const grown = ({ x, y, w, h }: Box, by: Mm): Box => ({ x: x - by, y: y - by, w: w + 2 * by, h: h + 2 * by });

/** Regions list their polygons by the lowest, then leftmost place they begin at. */
export function inOrder(region: Region): Region {
  const start = ({ outer }: Polygon): Point => outer[0] ?? { x: 0, y: 0 };
  return [...region].sort((a, b) => start(a).y - start(b).y || start(a).x - start(b).x);
}
