import { pick } from '../list/at.ts';
import { addTo, type Groups } from '../list/grouped.ts';
import type { Mm } from '../measure/units.ts';
import { grownBox } from './box.ts';
import { meetingPairs } from './meeting.ts';
import { boxOfPoints } from './ring.ts';
import type { Point, Polygon, Region } from './shape.ts';

/** Groups of polygons that can touch each other. */
export function clustersOf(region: Region, reach: Mm): Region[] {
  const boxes = region.map(({ outer }) => grownBox(boxOfPoints(outer), reach));
  const group = region.map((_, i) => i);
  const rootOf = (i: number): number => {
    let at = i;
    while (group[at] !== at) at = pick(group, at);
    return at;
  };
  for (const [i, j] of meetingPairs(boxes)) group[rootOf(i)] = rootOf(j);
  const clusters: Groups<number, Polygon> = new Map();
  region.forEach((polygon, i) => {
    addTo(clusters, rootOf(i), polygon);
  });
  return [...clusters.values()];
}

/** Regions list their polygons by the lowest, then leftmost place they begin at. */
export function inOrder(region: Region): Region {
  const start = ({ outer }: Polygon): Point => pick(outer, 0);
  return [...region].sort((a, b) => start(a).y - start(b).y || start(a).x - start(b).x);
}
