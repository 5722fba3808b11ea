import { clipPolyline, intersect, regionOfRings } from '../geometry/clip.ts';
import { type Contour, flattenPath, ringsOfPath } from '../geometry/curve.ts';
import { distance } from '../geometry/point.ts';
import { ringsOf } from '../geometry/region.ts';
import type { Path, Point, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import type { FlatPath } from './walk.ts';

/** Area of a path as it would be filled. */
export function areaOfPath(path: Path, rule: 'nonzero' | 'evenodd', tolerance: Mm): Region {
  return regionOfRings(ringsOfPath(path, tolerance), rule);
}

/** Area inside every clip in force, or null when there is none. */
export function windowOf(clips: readonly Path[], tolerance: Mm): Region | null {
  if (clips.length === 0) return null;
  return clips.map((clip) => areaOfPath(clip, 'nonzero', tolerance)).reduce(intersect);
}

/** Clipping a closed outline opens it; one that came out whole is closed again. */
function reclosed(points: Point[]): Contour {
  const [first, last] = [points[0], points[points.length - 1]];
  const whole = first && last && points.length > 3 && distance(first, last) <= SAME_LENGTH;
  return whole ? { points: points.slice(0, -1), closed: true } : { points, closed: false };
}

/**
 * Outlines of a path as straight lines within `tolerance`, cut off where its clips cut it off: filled areas
 * by the border of what shows, lines by the parts that show.
 */
export function outlinesOf(flat: FlatPath, tolerance: Mm): Contour[] {
  const window = windowOf(flat.clips, tolerance);
  if (!window) return flattenPath(flat.path, tolerance);
  if (flat.item.fill !== undefined) {
    const area = intersect(areaOfPath(flat.path, flat.item.fillRule ?? 'nonzero', tolerance), window);
    return ringsOf(area).map((ring) => ({ points: [...ring], closed: true }));
  }
  return flattenPath(flat.path, tolerance).flatMap(({ points, closed }) => {
    const first = points[0];
    const line = closed && first ? [...points, first] : points;
    return clipPolyline(line, window).map(reclosed);
  });
}
