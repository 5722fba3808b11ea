import type { Level } from '../bed/face.ts';
import type { Design } from '../design/schema.ts';
import { intersect } from '../geometry/clip.ts';
import { scale } from '../geometry/point.ts';
import { boxesMeet, boxOf, nearTo } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { sweptPieces } from '../geometry/sweep.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import { lastOf } from '../list/at.ts';
import { type Mm, radians } from '../measure/units.ts';
import type { ShownArea } from './result.ts';
import { sameHeight } from './surface.ts';

/** What lies in shadow of the surfaces at one height. */
export interface ShadowArea {
  readonly z: Mm;
  readonly region: Region;
}

/** How shadows are drawn over what lies in them: some light comes from all around. Our own choice, by eye. */
export const SHADE = { color: '#0d0a14', opacity: 0.46 } as const;

/** How far and where a shadow falls for each millimeter that its caster stands higher. */
export function shadowOf(light: Design['light']): Point {
  const azimuth = radians(light.azimuth);
  const reach = 1 / Math.tan(radians(light.altitude));
  return { x: -Math.cos(azimuth) * reach, y: -Math.sin(azimuth) * reach };
}

interface Caster {
  readonly region: Region;
  readonly bottom: number;
  readonly top: number;
}

/**
 * Shadows on everything that is seen, for each height that has any, from the deepest up. Light comes from
 * `azimuth` (counterclockwise from the right) at `altitude` over the face, as parallel rays; each part is a
 * prism over its outline, so shadows are exact polygons.
 */
export function castShadows(
  solids: readonly Solid[],
  levels: readonly Level[],
  shown: readonly ShownArea[],
  light: Design['light'],
): ShadowArea[] {
  const fall = shadowOf(light);
  const casters: Caster[] = [
    ...levels.map(({ region, z }) => ({ region, bottom: Number.NEGATIVE_INFINITY, top: z })),
    ...solids
      .filter((solid) => solid.z1 - solid.z0 > SAME_LENGTH)
      .map(({ region, z0, z1 }) => ({ region, bottom: z0, top: z1 })),
  ];
  const heights: Mm[] = [];
  for (const { z } of [...shown].sort((a, b) => a.z - b.z)) {
    if (heights.length === 0 || !sameHeight(lastOf(heights), z)) heights.push(z);
  }
  return heights.flatMap((z) => {
    const ground = shown.filter((area) => sameHeight(area.z, z)).flatMap((area) => area.region);
    const region = shadowAt(z, casters, fall, ground);
    return region.length > 0 ? [{ z, region }] : [];
  });
}

function shadowAt(z: Mm, casters: readonly Caster[], fall: Point, ground: Region): Region {
  const grounds = ground.map(({ outer }) => boxOfPoints(outer));
  const shadows: Box[] = [];
  // The pieces of all shadows at once, joined as they are cut to the ground: far quicker than one after the other.
  const pieces = casters.flatMap(({ region, bottom, top }): Region => {
    if (top <= z + SAME_LENGTH) return [];
    const swept = sweptPieces(region, scale(fall, Math.max(0, bottom - z)), scale(fall, top - z));
    return swept
      .filter((piece) => {
        const box = boxOf(piece);
        const falls = box !== null && grounds.some((own) => boxesMeet(box, own));
        if (falls) shadows.push(box);
        return falls;
      })
      .flat();
  });
  return intersect(pieces, nearTo(ground, shadows));
}
