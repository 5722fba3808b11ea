import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Placing } from '../place/place.ts';

/** For each placing, those whose bounds meet its own, in the order given. Sweep along x. */
export function neighborsOf(placings: readonly Placing[]): Placing[][] {
  const order = placings.map((_, i) => i);
  order.sort((a, b) => placings[a]!.bounds.x - placings[b]!.bounds.x || a - b);
  const found: number[][] = placings.map(() => []);
  let open: number[] = [];
  for (const i of order) {
    const { bounds } = placings[i]!;
    open = open.filter((j) => {
      const other = placings[j]!.bounds;
      return other.x + other.w > bounds.x - SAME_LENGTH;
    });
    for (const j of open) {
      const other = placings[j]!.bounds;
      if (other.y + other.h < bounds.y - SAME_LENGTH || bounds.y + bounds.h < other.y - SAME_LENGTH) continue;
      found[i]!.push(j);
      found[j]!.push(i);
    }
    open.push(i);
  }
  return found.map((list) => list.sort((a, b) => a - b).map((j) => placings[j]!));
}
