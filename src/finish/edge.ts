import { chordsInside } from '../geometry/chord.ts';
import { distance } from '../geometry/point.ts';
import { boxesMeet } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { lengthenings } from '../geometry/trueArea.ts';
import type { KeptResults } from '../layout/kept.ts';
import { type Against, justOutside, openWall, sidesOf } from './border.ts';
import type { Boxed, Surface } from './input.ts';

/**
 * Area of the edges of a part that stand free, in square millimeters: all around it and inside its
 * openings, less what stands against them. Against a lower neighbor only the step above it is free; in a
 * recess, only what rises over the rim.
 *
 * @param neighbors surfaces whose outlines overlap or touch the part's
 * @param results what was found of them before
 */
export function freeEdges(part: Surface, neighbors: readonly Boxed[], results: KeptResults): number {
  const around = neighbors.map(({ surface }) => surface);
  return results.of(part, `edges among ${around.length}`, around, () => edgesAmong(part, neighbors));
}

function edgesAmong(part: Surface, neighbors: readonly Boxed[]): number {
  const solid = neighbors.filter(
    ({ surface: { kind, z, bottom } }) =>
      (kind === 'solid' || kind === 'level') &&
      z > part.bottom + SAME_LENGTH &&
      bottom < part.z - SAME_LENGTH,
  );
  const longer = lengthenings();
  let area = 0;
  for (const side of sidesOf(part.region)) {
    const outside = justOutside(side);
    const box = boxOfPoints([outside.a, outside.b]);
    const against: Against[] = [];
    for (const { surface: other, box: otherBox } of solid) {
      if (!otherBox || !boxesMeet(box, otherBox)) continue;
      for (const [from, to] of chordsInside(outside.a, outside.b, other.region)) {
        against.push({ from, to, bottom: other.bottom, top: other.z });
      }
    }
    area += openWall(distance(side.a, side.b), part.bottom, part.z, against) * longer(side.a, side.b);
  }
  return area;
}
