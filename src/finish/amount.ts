import type { Finish } from '../design/schema.ts';
import type { Liters } from '../measure/units.ts';
import type { PaintJob } from './result.ts';

/** Paint and primer of what is painted, as it goes on: coats x area / spreading rate. */
export function amountOf(finish: Finish, jobs: readonly PaintJob[]): { volume: Liters; primer: Liters } {
  let volume = 0;
  let primer = 0;
  for (const { face, edge, back, primed, coats, primerCoats } of jobs) {
    volume += ((face + edge + back) * coats) / finish.rate_m2_l;
    if (finish.primer) primer += (primed * primerCoats) / finish.primer.rate_m2_l;
  }
  return { volume, primer };
}
