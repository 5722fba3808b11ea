import { clustersOf, inOrder } from '../geometry/cluster.ts';
import type { Region } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';

/**
 * Does polygon work letter by letter: polygons whose boxes, grown by `reach`, do not meet cannot touch each
 * other's result, and the sweep of polygon clipping takes far longer over a whole text than over its
 * letters one by one. `work` must not move or grow a polygon by more than `reach` to any side.
 */
export function letterByLetter(region: Region, reach: Mm, work: (letters: Region) => Region): Region {
  return inOrder(clustersOf(region, reach).flatMap(work));
}
