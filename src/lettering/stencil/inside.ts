import { centroidOfRing, containsPoint } from '../../geometry/ring.ts';
import type { Point, Polygon, Ring } from '../../geometry/shape.ts';
import { at, cyclic } from '../../list/at.ts';

/**
 * A place well inside a ring: its center of area where that lies inside, else the middle of the longest
 * stretch inside the ring on one of several level lines.
 */
export function insidePoint(ring: Ring): Point {
  const center = centroidOfRing(ring);
  if (containsPoint(ring, center)) return center;
  const heights = ring.map((point) => point.y);
  const low = Math.min(...heights);
  const high = Math.max(...heights);
  let best = center;
  let longest = 0;
  for (let i = 1; i < 16; i += 1) {
    // An odd share of the height does not run through corners that stand on round numbers.
    const y = low + ((high - low) * (i + 0.0137)) / 16;
    const crossings = crossingsAt(ring, y);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const [from, to] = [at(crossings, k), at(crossings, k + 1)];
      if (to - from > longest) {
        longest = to - from;
        best = { x: (from + to) / 2, y };
      }
    }
  }
  return best;
}

function crossingsAt(ring: Ring, y: number): number[] {
  const crossings: number[] = [];
  ring.forEach((a, i) => {
    const b = cyclic(ring, i + 1);
    if (a.y < y !== b.y < y) crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  });
  return crossings.sort((p, q) => p - q);
}

/** Whether a polygon covers a place, by counting the sides to the right: quick, and of no matter on a border. */
export function covers({ outer, holes }: Polygon, { x, y }: Point): boolean {
  let odd = false;
  for (const ring of [outer, ...holes]) {
    let a = ring[ring.length - 1];
    for (const b of ring) {
      if (a && a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
      a = b;
    }
  }
  return odd;
}
