import { angleOf, subtract } from '../../geometry/point.ts';
import { ringsOf } from '../../geometry/region.ts';
import type { Path, PathCommand, Region } from '../../geometry/shape.ts';
import { cyclic } from '../../list/at.ts';
import { grouped } from '../../list/grouped.ts';
import { type Mm, radians } from '../../measure/units.ts';
import type { Normal } from './lambert.ts';

/** How wide an edge is eased, as a few strokes of sandpaper leave it. Common practice, no source. */
export const EASED: Mm = 1;
/** Directions that are told apart: one color each. */
const SECTORS = 24;

/** Edges of one direction. */
export interface Arris {
  /** Halfway between out of the face and their side. */
  readonly normal: Normal;
  /** Each edge by itself; it is eased over `EASED` inside of it. */
  readonly path: Path;
}

/** The eased edges of an area of wood. */
export function arrisesOf(region: Region): Arris[] {
  const edges = ringsOf(region).flatMap((ring) =>
    ring.map((from, i) => {
      const to = cyclic(ring, i + 1);
      // Wood lies to the left of its borders, outer and inner ones.
      const side = angleOf(subtract(to, from)) - 90;
      return { from, to, sector: Math.round((side * SECTORS) / 360) };
    }),
  );
  return [...grouped(edges, ({ sector }) => sector)].map(([sector, alike]) => {
    const turn = radians((sector * 360) / SECTORS);
    return {
      normal: { x: Math.cos(turn) * Math.SQRT1_2, y: Math.sin(turn) * Math.SQRT1_2, z: Math.SQRT1_2 },
      path: alike.flatMap(({ from, to }): PathCommand[] => [
        { op: 'M', x: from.x, y: from.y },
        { op: 'L', x: to.x, y: to.y },
      ]),
    };
  });
}
