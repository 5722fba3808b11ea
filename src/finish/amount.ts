import type { Finish } from '../design/schema.ts';
import type { Liters, SquareMeters } from '../measure/units.ts';

/** Areas that one finish goes on. */
export interface Areas {
  readonly face: SquareMeters;
  readonly edge: SquareMeters;
  readonly back: SquareMeters;
  /** What primer goes on, each edge counted as often as its material drinks more; backs not counted. */
  readonly primed: SquareMeters;
}

/**
 * Paint and primer for the areas, waste added: coats x area / spreading rate. Backs get one coat, of primer
 * where the finish has one and of the finish itself where it has none.
 */
export function amountOf(finish: Finish, areas: Areas, waste: number): { volume: Liters; primer: Liters } {
  const { primer } = finish;
  const primes = primer !== null && primer.coats > 0;
  const own = (areas.face + areas.edge) * finish.coats + (primes ? 0 : areas.back);
  const under = primes ? (areas.primed * primer.coats + areas.back) / primer.rate_m2_l : 0;
  return { volume: (own / finish.rate_m2_l) * (1 + waste), primer: under * (1 + waste) };
}
