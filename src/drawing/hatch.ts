import { clipPolyline } from '../geometry/clip.ts';
import { rotate } from '../geometry/point.ts';
import { boxOf, transformRegion } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
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

/** Lines across a region at an angle, a pitch apart, on one grid for the whole drawing. */
function strokes(region: Region, angle: Deg, pitch: Mm): [Point, Point][] {
  const level = transformRegion(region, (p) => rotate(p, -angle));
  const box = boxOf(level);
  if (!box) return [];
  const found: [Point, Point][] = [];
  for (let i = Math.ceil(box.y / pitch); i * pitch < box.y + box.h; i++) {
    // Half a thousandth off the grid: a line along an edge of the region would be in or out by chance.
    const y = i * pitch + 5e-4;
    const whole = [
      { x: box.x - 1, y },
      { x: box.x + box.w + 1, y },
    ];
    for (const part of clipPolyline(whole, level)) {
      const [from, to] = [part[0], part[part.length - 1]];
      if (from && to) found.push([rotate(from, angle), rotate(to, angle)]);
    }
  }
  return found;
}

/** Hatching of a region. */
export function hatch(region: Region, hatching: Hatching | null, color: Color = INK.soft): DrawItem[] {
  if (hatching === null || region.length === 0) return [];
  const { angle, pitch, crossed } = hatching;
  const pairs = [...strokes(region, angle, pitch), ...(crossed ? strokes(region, angle + 90, pitch) : [])];
  return pairs.length === 0 ? [] : [lines(pairs, { stroke: color, width: WEIGHT.hair })];
}
