import { inches } from '../../measure/units.ts';
import type { Edge } from '../schema.ts';
import { type Building, GROUND } from './building.ts';

/** A turned knob of the usual size, as it is sold for doors of cabinets; size, depth and mass from memory. */
const KNOB = { size: inches(1), depth: inches(1), mass_kg: 0.04 };

/**
 * A knob on a stile, as high as the lock rail, or as the middle of the door where it has none.
 * @param between in the middle of these; the stile's own sides when left out
 */
export function knob(b: Building, stile: string, lockRail: string | null, between = sides(b, stile)): void {
  const { size, depth, mass_kg } = KNOB;
  b.part('fitting', 'knob', 'knob', { shape: { form: 'round' }, depth, mass_kg, on: b.id(stile) });
  b.center('knob', 'x', ...between);
  b.center('knob', 'y', ...sides(b, lockRail ?? GROUND));
  b.size('knob', 'x', size);
  b.size('knob', 'y', size);
}

const sides = (b: Building, role: string): [Edge, Edge] => [b.edge(role, 'low'), b.edge(role, 'high')];
