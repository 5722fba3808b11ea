import { subtract, subtractedArea } from '../geometry/clip.ts';
import { areaOf, boxOf, EMPTY } from '../geometry/region.ts';
import type { Box, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Surface } from './input.ts';
import { near } from './near.ts';

/** A surface with what is seen of it from the room. */
export interface Shown {
  readonly surface: Surface;
  readonly region: Region;
  /** Square millimeters. */
  readonly area: number;
}

/**
 * What is seen of each surface: its outline less everything that lies above it. Areas are taken through
 * unions, which the polygon library gets right where its differences may not.
 *
 * @param surfaces from the highest to the deepest, as `surfacesOf` gives them
 */
export function shownOf(surfaces: readonly Surface[]): Shown[] {
  const boxes = surfaces.map((surface) => boxOf(surface.region));
  const above = near(boxes, 0);
  return surfaces.map((surface, i) => {
    if (surface.region.length === 0) return { surface, region: EMPTY, area: 0 };
    const cover: Region = above(i)
      .filter((j) => j < i && overlap(boxes[i] ?? null, boxes[j] ?? null))
      .flatMap((j) => surfaces[j]?.region ?? EMPTY);
    if (cover.length === 0) return { surface, region: surface.region, area: areaOf(surface.region) };
    return {
      surface,
      region: subtract(surface.region, cover),
      area: subtractedArea(surface.region, cover),
    };
  });
}

/** Whether the boxes share more than a border: neighbors in a row cover nothing of each other. */
function overlap(a: Box | null, b: Box | null): boolean {
  if (!a || !b) return false;
  const across = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x);
  const up = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y);
  return across > SAME_LENGTH && up > SAME_LENGTH;
}
