import type { Axis } from '../../design/schema.ts';
import { distance } from '../../geometry/point.ts';
import type { Point, Region, Ring } from '../../geometry/shape.ts';
import { cyclic, pick } from '../../list/at.ts';
import { type Edge, edgeBetween, imageOf, ON, other } from './edge.ts';

/** The points of an edge that bows strictly between two of its places, in the order from the one to the other. */
function between(edge: Edge, p: Point, q: Point): Point[] {
  const along = other(edge.axis);
  const [low, high] = [Math.min(p[along], q[along]) + ON, Math.max(p[along], q[along]) - ON];
  const points = (edge.curve ?? []).filter((one) => one[along] > low && one[along] < high);
  return p[along] < q[along] ? points : points.toReversed();
}

/** A region whose straight sides that lie on real edges follow them. */
export function regionAlong(region: Region, edges: readonly Edge[]): Region {
  const ring = (points: Ring): Ring => {
    const sides = points.map((p, i) => edgeBetween(edges, p, cyclic(points, i + 1)) ?? null);
    let moved = false;
    const images = points.map((p, i) => {
      // A curve that only touches an edge stays as it is.
      const on = new Set<Axis>([cyclic(sides, i - 1), cyclic(sides, i)].flatMap((edge) => edge?.axis ?? []));
      const image =
        on.size === 0
          ? null
          : imageOf(
              p,
              edges.filter(({ axis }) => on.has(axis)),
            );
      if (image && distance(image, p) > 0) moved = true;
      return image ?? p;
    });
    const next = images.flatMap((p, i) => {
      const edge = pick(sides, i);
      const bow = edge?.curve ? between(edge, p, cyclic(images, i + 1)) : [];
      if (bow.length > 0) moved = true;
      return [p, ...bow];
    });
    return moved ? next : points;
  };
  const next = region.map((one) => {
    const [outer, holes] = [ring(one.outer), one.holes.map(ring)];
    const same = outer === one.outer && holes.every((hole, i) => hole === one.holes[i]);
    return same ? one : { outer, holes };
  });
  return next.every((one, i) => one === region[i]) ? region : next;
}
