import { gridded, onGrid } from '../geometry/clip.ts';
import { clustersOf, inOrder } from '../geometry/cluster.ts';
import { boxesMeet, boxOf, EMPTY } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Region, Ring } from '../geometry/shape.ts';
import type { ShapeMemory } from '../geometry/shapeMemory.ts';
import type { Mm } from '../measure/units.ts';

/** A region as a shape, with its box's corner at the origin, and the place where it stands. */
export interface Standing {
  readonly at: Point;
  /** Every corner, told from `at`: equal texts mean equal shapes. */
  readonly text: string;
  readonly shape: () => Region;
}

/** The region as a shape in its place. Its corners are brought onto the grid, where those of letters are anyway. */
export function standing(region: Region): Standing {
  const { x, y } = boxOf(region) ?? { x: 0, y: 0 };
  const at = { x: gridded(x), y: gridded(y) };
  return { at, text: textOf(region, at), shape: () => placed(region, { x: -at.x, y: -at.y }) };
}

const textOf = (region: Region, at: Point): string =>
  region.map(({ outer, holes }) => [outer, ...holes].map((ring) => textOfRing(ring, at)).join(';')).join('/');

function textOfRing(ring: Ring, at: Point): string {
  let text = '';
  for (const { x, y } of ring) text += `${onGrid(x - at.x)},${onGrid(y - at.y)} `;
  return text;
}

/** A shape that stands at the origin, or any part of it, put in its place: on the grid again. */
export const placed = (region: Region, at: Point): Region =>
  region.map(({ outer, holes }) => ({
    outer: placedRing(outer, at),
    holes: holes.map((hole) => placedRing(hole, at)),
  }));

export const placedRing = (ring: Ring, at: Point): Ring =>
  ring.map(({ x, y }) => ({ x: gridded(x + at.x), y: gridded(y + at.y) }));

/**
 * As `letterByLetter`, the same work on the same letters done once. `what` names the work with all its
 * settings; `beside` is what else it looks at, no farther off than the letters' box.
 */
export function eachShape(
  memory: ShapeMemory,
  what: string,
  region: Region,
  reach: Mm,
  work: (letters: Region, near: Region) => Region,
  beside: Region = EMPTY,
): Region {
  const boxed = beside.map((polygon) => ({ polygon, own: boxOfPoints(polygon.outer) }));
  const results = clustersOf(region, reach).flatMap((letters) => {
    const { at, text, shape } = standing(letters);
    const box = boxOf(letters);
    const near = box ? boxed.filter(({ own }) => boxesMeet(own, box)).map(({ polygon }) => polygon) : EMPTY;
    const key = near.length > 0 ? `${what}:${text}:${textOf(near, at)}` : `${what}:${text}`;
    return placed(
      memory(key, () => work(shape(), placed(near, { x: -at.x, y: -at.y }))),
      at,
    );
  });
  return inOrder(results);
}
