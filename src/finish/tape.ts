import { chordsInside } from '../geometry/chord.ts';
import { boxesMeet, boxOf } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import { lengthenings } from '../geometry/trueArea.ts';
import { pick } from '../list/at.ts';
import { addUp } from '../list/totals.ts';
import type { Mm } from '../measure/units.ts';
import { justOutside, sidesOf } from './border.ts';
import type { Shown } from './show.ts';
import { sameHeight } from './surface.ts';

/**
 * Masking tape for each finish: the borders of painted shapes with another finish, or bare wood, on the same
 * surface. A border between two painted shapes is taped once, for the one painted later. Lettering goes on
 * by pattern or stencil and takes no tape.
 *
 * @param shown from the highest to the deepest
 * @param neighbors for each, indexes of what overlaps or touches
 */
export function tapeOf(shown: readonly Shown[], neighbors: readonly (readonly number[])[]): Map<string, Mm> {
  const tape = new Map<string, Mm>();
  const longer = lengthenings();
  shown.forEach(({ surface, region }, i) => {
    if (surface.kind !== 'painted' || surface.finish === null) return;
    // What was painted later stands before it in the list.
    const others = pick(neighbors, i).flatMap((j) => {
      const other = shown[j];
      const bordered =
        other &&
        sameHeight(other.surface.z, surface.z) &&
        other.surface.finish !== surface.finish &&
        (other.surface.kind !== 'painted' || j > i) &&
        other.surface.kind !== 'letter';
      return bordered ? [{ region: other.region, box: boxOf(other.region) }] : [];
    });
    let length = 0;
    for (const side of sidesOf(region)) {
      const outside = justOutside(side);
      const box = boxOfPoints([outside.a, outside.b]);
      for (const other of others) {
        if (!other.box || !boxesMeet(box, other.box)) continue;
        for (const [from, to] of chordsInside(outside.a, outside.b, other.region))
          length += (to - from) * longer(side.a, side.b);
      }
    }
    addUp(tape, surface.finish, length);
  });
  return tape;
}
