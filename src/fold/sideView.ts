import { swing } from '../bed/swing.ts';
import type { Deg } from '../measure/units.ts';
import { bodiesOf, cornersOf, type FoldInput } from './body.ts';
import type { SideShape } from './result.ts';

/**
 * The side view with the bed lowered by `angle` (0 stowed, 90 lowered): the same bodies that `planFold`
 * sweeps, as polygons in room coordinates, the bed's own first and then what lies on it.
 */
export function sideView(input: FoldInput, angle: Deg): SideShape[] {
  return bodiesOf(input).map((body) => ({
    id: body.id,
    kind: body.kind,
    points: cornersOf(input.bed, body).map((arm) => swing(input.bed, arm, angle)),
  }));
}
