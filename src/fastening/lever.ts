import { isBought } from '../design/made.ts';
import type { LaidPart } from '../layout/laid.ts';
import type { Kg, Mm } from '../measure/units.ts';

/** How far a part's middle stands out, and how high it is where it touches. */
export interface Lever {
  readonly out: Mm;
  readonly base: Mm;
}

/**
 * What pulls at a part's fasteners, as a mass: its own with the bed lowered; with the bed stowed it tips about
 * its lower edge, and the upper fasteners hold weight x standing out / height, by moments about that edge.
 */
const pullOf = (mass: Kg, { out, base }: Lever): Kg => (base > 0 ? mass * Math.max(1, out / base) : mass);

/**
 * The mass of a part that brads were meant for and that screws have to hold, its pull being over the limit; null of any
 * other part: how it is fastened does not follow from its mass.
 */
export const massFelt = (laid: LaidPart, mass: Kg, lever: Lever, over: Kg): Kg | null =>
  laid.fixing.how === 'brads' && !isBought(laid) && pullOf(mass, lever) > over ? mass : null;
