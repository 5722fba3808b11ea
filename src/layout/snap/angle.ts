import type { Deg } from '../../measure/units.ts';

const STEP: Deg = 15;

/** The nearest of the multiples of 15 degrees and the angles of other strips, when it is near enough. */
export function snapAngle(angle: Deg, others: readonly Deg[], tolerance: Deg): Deg | null {
  const turn = (a: Deg): Deg => a - 360 * Math.ceil((a - 180) / 360);
  const wanted = [Math.round(angle / STEP) * STEP];
  // A strip looks the same turned half around, and stands square to itself turned a quarter.
  for (const other of others) for (let i = 0; i < 4; i++) wanted.push(other + 90 * i);
  let best: Deg | null = null;
  for (const one of wanted) {
    const off = Math.abs(turn(one - angle));
    if (off <= tolerance && (best === null || off < Math.abs(turn(best - angle)))) best = one;
  }
  return best === null ? null : turn(best);
}
