import type { Mm } from '../measure/units.ts';
import type { Point } from './shape.ts';
import { DUST } from './tolerance.ts';

/** A side of an outline or border, from its lower end to its upper one. */
export interface Side {
  readonly low: Point;
  readonly high: Point;
}

/** The side between two corners. */
export const sideBetween = (p: Point, q: Point): Side =>
  p.y < q.y ? { low: p, high: q } : { low: q, high: p };

/** How far along x a side lies at a height between its ends; level with an end, just where that is. */
export function placeAt({ low, high }: Side, y: Mm): Mm {
  if (Math.abs(y - low.y) <= DUST) return low.x;
  if (Math.abs(y - high.y) <= DUST) return high.x;
  return low.x + ((high.x - low.x) * (y - low.y)) / (high.y - low.y);
}
