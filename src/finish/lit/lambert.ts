import type { Design } from '../../design/schema.ts';
import { colorOfLight, lightOf } from '../../drawing/color.ts';
import type { Color } from '../../drawing/drawing.ts';
import type { Point } from '../../geometry/shape.ts';
import { radians } from '../../measure/units.ts';

/** Direction that a small piece of a surface looks in: across the face, up it and out of it; of length 1. */
export interface Normal extends Point {
  readonly z: number;
}

/** Share of the light that comes from all around and reaches every surface alike. Our own choice, by eye. */
const AROUND = 0.5;
/** No surface is more than so many times as light as the face itself, however low the light. */
const MOST = 1.7;

/**
 * A color as it looks on a surface that looks in some direction, by Lambert's cosine law: the light of a lamp that a
 * surface throws back goes with the cosine between its normal and the way to the lamp. What looks straight out of the
 * face keeps its color, so that the colors of a picture are those of the finishes.
 */
export function litColor(color: Color, normal: Normal, { azimuth, altitude }: Design['light']): Color {
  const [turn, rise] = [radians(azimuth), radians(altitude)];
  const along = normal.x * Math.cos(turn) + normal.y * Math.sin(turn);
  const cosine = along * Math.cos(rise) + normal.z * Math.sin(rise);
  return dimmed(color, Math.min(MOST, AROUND + ((1 - AROUND) * Math.max(0, cosine)) / Math.sin(rise)));
}

/** A color in a share of the light. */
export function dimmed(color: Color, share: number): Color {
  const { r, g, b } = lightOf(color);
  return colorOfLight({ r: r * share, g: g * share, b: b * share });
}
