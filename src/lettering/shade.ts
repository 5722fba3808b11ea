import { regionOfRings, union } from '../geometry/clip.ts';
import { add, cross, length, subtract } from '../geometry/point.ts';
import { ringsOf, translateRegion } from '../geometry/region.ts';
import { reverseRing, signedArea } from '../geometry/ring.ts';
import type { Point, Region, Ring } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';

/** A copy of the letters beside them, as a light from the other side would throw it on the wall behind. */
export const dropShade = (region: Region, by: Point): Region => translateRegion(region, by.x, by.y);

/**
 * The letters drawn out to solid blocks along a vector: everything the region passes over on its way, the
 * exact Minkowski sum with the segment. It is the region at both ends and what its borders sweep; stretches
 * of border that move to the same side sweep one simple polygon each.
 */
export function blockShade(region: Region, by: Point): Region {
  if (by.x === 0 && by.y === 0) return union([region]);
  const swept = ringsOf(region).flatMap((ring) => sweepsOf(ring, by));
  return union([region, dropShade(region, by), regionOfRings(swept, 'nonzero')]);
}

function sweepsOf(ring: Ring, by: Point): Ring[] {
  const sides = ring.map((point, i) => {
    const next = ring[(i + 1) % ring.length] ?? point;
    const spread = cross(subtract(next, point), by) / length(by);
    // Sides along the vector sweep nothing. Kept in a stretch they would fold it onto itself, which the
    // polygon library fills wrongly when they lie level.
    return { from: point, to: next, side: Math.abs(spread) < SAME_LENGTH ? 0 : Math.sign(spread) };
  });
  const chains: Point[][] = [];
  let last = 0;
  for (const { from, to, side } of sides) {
    if (side !== 0) {
      const open = chains.at(-1);
      if (side === last && open) open.push(to);
      else chains.push([from, to]);
    }
    last = side;
  }
  return chains.map((chain) => {
    const sweep = [...chain, ...chain.map((point) => add(point, by)).reverse()];
    return signedArea(sweep) < 0 ? reverseRing(sweep) : sweep;
  });
}
