import { dot, leftNormal, subtract } from '../../geometry/point.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import type { Crossing } from './crossing.ts';
import type { Side } from './solid.ts';

/** Borders this near to a bar touch it, and firm sheet is asked for with as much to spare: rounding is far less. */
const SPARE: Mm = 0.01;

/** A stretch of a line. */
type Stretch = readonly [from: number, to: number];

/**
 * Whether a bar is as plain as most: its middle, as wide as firm sheet has to be, runs clear of what the letters leave
 * from `inside` behind one border to `inside` behind the other, and no sheet but that of its two ends touches it.
 * Nothing else can hang on it then: between pieces of sheet there is no way but through the bar.
 *
 * @param sides of the letters, with the piece of sheet beyond each
 * @param ends the pieces that the bar runs into
 * @param reach half the width of its middle
 */
export function isPlain(
  crossing: Crossing,
  sides: readonly Side[],
  ends: readonly number[],
  { width, reach, inside }: { readonly width: Mm; readonly reach: Mm; readonly inside: Mm },
): boolean {
  if (!crossing.meetsHome || !crossing.meetsTarget) return false;
  const { leaves, along } = crossing;
  const across = leftNormal(along);
  // Along the bar and beside its center line, from where it leaves the sheet.
  const own = (p: Point): Point => ({
    x: dot(subtract(p, leaves), along),
    y: dot(subtract(p, leaves), across),
  });
  const bar: Stretch = [-crossing.before, crossing.length + crossing.after];
  const core: Stretch = [-inside - reach - SPARE, crossing.length + inside + reach + SPARE];
  return sides.every(({ from, to, beyond }) => {
    const [a, b] = [own(from), own(to)];
    const beside = stretchNear(a, b, width / 2 + SPARE);
    if (beside && meet(beside, [bar[0] - SPARE, bar[1] + SPARE]) && !ends.includes(beyond)) return false;
    const middle = stretchNear(a, b, reach + SPARE);
    return !middle || !(meet(middle, [core[0], bar[0]]) || meet(middle, [bar[1], core[1]]));
  });
}

/** How far along the bar a side runs within `by` of its center line; null where it keeps away. */
function stretchNear(a: Point, b: Point, by: Mm): Stretch | null {
  const [low, high] = a.y < b.y ? [a, b] : [b, a];
  if (low.y > by || high.y < -by) return null;
  const at = (y: Mm): Mm => low.x + ((y - low.y) / (high.y - low.y)) * (high.x - low.x);
  const from = low.y < -by ? at(-by) : low.x;
  const to = high.y > by ? at(by) : high.x;
  return from < to ? [from, to] : [to, from];
}

/** Whether two stretches have more than an end in common; one that is turned around has nothing. */
const meet = (a: Stretch, b: Stretch): boolean => b[0] < b[1] && Math.max(a[0], b[0]) <= Math.min(a[1], b[1]);
