import { clustersOf, inOrder } from '../geometry/cluster.ts';
import type { Region } from '../geometry/shape.ts';

/**
 * Does polygon work letter by letter: polygons whose boxes do not meet cannot touch each other's result, and the sweep
 * of polygon clipping takes far longer over a whole text than over its letters one by one. `work` must not move or
 * grow a polygon.
 */
export function letterByLetter(region: Region, work: (letters: Region) => Region): Region {
  return inOrder(clustersOf(region, 0).flatMap(work));
}
