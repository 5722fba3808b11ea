import { cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { distance, lerp } from './point.ts';
import type { Point, Ring } from './shape.ts';

/** A border as the way around it. */
export interface Along {
  readonly length: Mm;
  /** How far along each corner lies, from the first one, which is at none. */
  readonly corners: readonly Mm[];
  /** The place at a distance along it, any number of times around. */
  readonly at: (distance: Mm) => Point;
}

export function alongRing(ring: Ring): Along {
  const ends: Mm[] = [];
  let sum = 0;
  ring.forEach((from, i) => {
    sum += distance(from, cyclic(ring, i + 1));
    ends.push(sum);
  });
  const corners = [0, ...ends.slice(0, -1)];
  return {
    length: sum,
    corners,
    at: (distance) => {
      const wanted = ((distance % sum) + sum) % sum;
      let low = 0;
      let high = ends.length - 1;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (pick(ends, middle) < wanted) low = middle + 1;
        else high = middle;
      }
      const begin = pick(corners, low);
      const size = pick(ends, low) - begin;
      return lerp(pick(ring, low), cyclic(ring, low + 1), size > 0 ? (wanted - begin) / size : 0);
    },
  };
}
