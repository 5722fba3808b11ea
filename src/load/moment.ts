import type { Bed } from '../bed/bed.ts';
import { armOf, swing } from '../bed/swing.ts';
import { type Deg, GRAVITY, type Kg, type Mm, type NewtonMeters } from '../measure/units.ts';
import type { PointMass } from './mass.ts';

const MM_PER_METER = 1000;

export const totalMass = (masses: readonly PointMass[]): Kg => masses.reduce((sum, m) => sum + m.mass, 0);

/** Center of gravity; null when nothing weighs anything. */
export function centerOf(
  masses: readonly PointMass[],
): { readonly x: Mm; readonly y: Mm; readonly z: Mm } | null {
  const total = totalMass(masses);
  if (total <= 0) return null;
  const mean = (of: (m: PointMass) => Mm) => masses.reduce((sum, m) => sum + m.mass * of(m), 0) / total;
  return { x: mean((m) => m.x), y: mean((m) => m.y), z: mean((m) => m.z) };
}

/**
 * Moment of the weights about the pivot with the bed lowered by `angle`: weight times the distance of the
 * center of gravity from the pivot, level with the floor. Positive pulls the bed down. For an even, thin
 * leaf of height h hinged at its foot this is m g (h/2) sin a (check-values, section 11).
 */
export function momentAt(bed: Bed, masses: readonly PointMass[], angle: Deg): NewtonMeters {
  const center = centerOf(masses);
  if (!center) return 0;
  const lever = swing(bed, armOf(bed, center.y, center.z), angle).x - bed.pivot.fromWall;
  return (totalMass(masses) * GRAVITY * lever) / MM_PER_METER;
}
