import type { JointFound } from '../joinery/piece.ts';
import type { LaidPart } from '../layout/laid.ts';
import { addUp, totalOf } from '../list/totals.ts';

/** Parts that are fixed at once: one alone, or several whose joints are glued together. */
export type Unit = readonly LaidPart[];

/**
 * Joints that are put together at once: halves lock into each other, and a miter is closed while both of its
 * ends can still be shifted. What is butted or coped is fitted against what is there already. Common
 * practice, no source.
 */
const AT_ONCE: Readonly<Record<JointFound['kind'], boolean>> = {
  'half-lap': true,
  miter: true,
  butt: false,
  cope: false,
};

/** Fixed parts by what is put together at once, in the layout's order of their first parts. */
export function unitsOf(fixed: readonly LaidPart[], joints: readonly JointFound[]): Unit[] {
  const unitOf = new Map(fixed.map((laid) => [laid.id, [laid]]));
  for (const { parts, kind } of joints) {
    const [a, b] = [unitOf.get(parts[0]), unitOf.get(parts[1])];
    if (!AT_ONCE[kind] || !a || !b || a === b) continue;
    a.push(...b);
    for (const laid of b) unitOf.set(laid.id, a);
  }
  const laps = lapsOf(joints);
  return [...new Set(unitOf.values())].map((unit) => fromBelow(unit, laps));
}

/** From the lowest up; of halved ones at one height first those that are notched on their face. */
const fromBelow = (unit: Unit, laps: ReadonlyMap<string, number>): Unit =>
  [...unit].sort((a, b) => a.z0 + a.z1 - b.z0 - b.z1 || totalOf(laps, a.id) - totalOf(laps, b.id));

/** How many halved joints a part covers, less those in which it is covered. */
function lapsOf(joints: readonly JointFound[]): ReadonlyMap<string, number> {
  const laps = new Map<string, number>();
  for (const { parts, kind, through } of joints) {
    if (kind !== 'half-lap') continue;
    for (const id of parts) addUp(laps, id, id === through ? 1 : -1);
  }
  return laps;
}
