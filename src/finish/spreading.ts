/**
 * Spreading rate from what a data sheet tells, in square meters a liter: 1000 x volume solids / dry film in
 * micrometers (a coating maker's general information; check value 65 %, 125 um: 5.2).
 *
 * @param solids share of the volume that stays when dry, 0 to 1
 * @param film dry film of one coat, micrometers
 * @param transfer share of the paint that reaches the work, 0 to 1
 */
export function spreadingRate(solids: number, film: number, transfer = 1): number {
  return (1000 * solids * transfer) / film;
}
