import { rotate } from '../geometry/point.ts';
import { ringsOf, transformRegion } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { at, cyclic } from '../list/at.ts';
import { addTo } from '../list/grouped.ts';
import type { Deg, Mm } from '../measure/units.ts';
import type { Color, DrawItem } from './drawing.ts';
import { lines } from './items.ts';
import { INK, WEIGHT } from './style.ts';

export interface Hatching {
  readonly angle: Deg;
  readonly pitch: Mm;
  /** A second set of lines, turned by 90 degrees. */
  readonly crossed?: boolean | undefined;
}

/** Patterns that stay apart in black and white, for legends of up to eight kinds. */
export const HATCHINGS: readonly (Hatching | null)[] = [
  null,
  { angle: 45, pitch: 2.4 },
  { angle: -45, pitch: 2.4 },
  { angle: 45, pitch: 2.4, crossed: true },
  { angle: 0, pitch: 1.8 },
  { angle: 90, pitch: 1.8 },
  { angle: 0, pitch: 1.8, crossed: true },
  { angle: 45, pitch: 1.1 },
];

/** Where the sides of a region cross the lines of a grid, by the number of the line. */
function crossings(level: Region, pitch: Mm): Map<number, number[]> {
  const found = new Map<number, [number, ...number[]]>();
  for (const ring of ringsOf(level)) {
    ring.forEach((p, i) => {
      const q = cyclic(ring, i + 1);
      const [low, high] = p.y < q.y ? [p, q] : [q, p];
      // Half open, so that a line through a corner crosses one of its two sides.
      for (let n = Math.ceil(low.y / pitch); n * pitch < high.y; n++) {
        const x = low.x + ((n * pitch - low.y) / (high.y - low.y)) * (high.x - low.x);
        addTo(found, n, x);
      }
    });
  }
  return found;
}

/** Lines across a region at an angle, a pitch apart, on one grid for the whole drawing. */
function strokes(region: Region, angle: Deg, pitch: Mm): [Point, Point][] {
  const level = transformRegion(region, (p) => rotate(p, -angle));
  const lines: [Point, Point][] = [];
  for (const [n, xs] of crossings(level, pitch)) {
    xs.sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const [from, to] = [at(xs, i), at(xs, i + 1)];
      if (to - from < 0.05) continue;
      lines.push([rotate({ x: from, y: n * pitch }, angle), rotate({ x: to, y: n * pitch }, angle)]);
    }
  }
  return lines;
}

/** Hatching of a region. */
export function hatch(region: Region, hatching: Hatching | null, color: Color = INK.soft): DrawItem[] {
  if (hatching === null || region.length === 0) return [];
  const { angle, pitch, crossed } = hatching;
  const pairs = [...strokes(region, angle, pitch), ...(crossed ? strokes(region, angle + 90, pitch) : [])];
  return pairs.length === 0 ? [] : [lines(pairs, { stroke: color, width: WEIGHT.hair })];
}
