import type { Edge } from '../schema.ts';
import { type Building, GROUND } from './building.ts';

/**
 * A knob on a stile, as high as the lock rail, or as the middle of the door where it has none.
 * @param between in the middle of these; the stile's own sides when left out
 */
export function knob(b: Building, stile: string, lockRail: string | null, between = sides(b, stile)): void {
  b.hardware('knob', 'knob', { entry: 'knob-1in', on: stile });
  b.center('knob', 'x', ...between);
  b.center('knob', 'y', ...sides(b, lockRail ?? GROUND));
}

const sides = (b: Building, role: string): [Edge, Edge] => [b.edge(role, 'low'), b.edge(role, 'high')];
