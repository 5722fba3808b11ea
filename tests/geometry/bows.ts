import type { BowedPoint } from '../../src/geometry/arcs.ts';
import { distance } from '../../src/geometry/point.ts';
import { signedArea } from '../../src/geometry/ring.ts';
import type { Point } from '../../src/geometry/shape.ts';

/**
 * Area between a side and its bow, in mm2; more than 0 where it bows out of an outline that turns left. Chord and
 * bulge give the radius, chord (1 + b2) / 4b, and the segment's area r2 (angle - sin angle) / 2.
 */
function areaOfBow(a: Point, b: Point, bulge: number): number {
  if (bulge === 0) return 0;
  const angle = 4 * Math.atan(Math.abs(bulge));
  const radius = (distance(a, b) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return (Math.sign(bulge) * (radius * radius * (angle - Math.sin(angle)))) / 2;
}

/** Length of a side along its bow. */
function lengthOfBow(a: Point, b: Point, bulge: number): number {
  const chord = distance(a, b);
  const way = Math.abs(bulge);
  return way === 0 ? chord : (chord * (1 + way * way) * Math.atan(way)) / way;
}

/** What a closed outline measures along its arcs; `bowed`: the length of the arcs alone. */
export function figuresOf(outline: readonly BowedPoint[]) {
  const found = { length: 0, bowed: 0, area: signedArea(outline), arcs: 0 };
  for (const [i, a] of outline.entries()) {
    const b = outline[(i + 1) % outline.length] ?? a;
    const length = lengthOfBow(a, b, a.bulge);
    found.length += length;
    found.area += areaOfBow(a, b, a.bulge);
    if (a.bulge === 0) continue;
    found.bowed += length;
    found.arcs += 1;
  }
  return found;
}
