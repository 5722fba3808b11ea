import type { Lettering } from '../design/schema.ts';
import { offset, subtract, union } from '../geometry/clip.ts';
import { EMPTY } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { radians } from '../measure/units.ts';
import type { LetterLayer } from './result.ts';
import { blockShade, dropShade } from './shade.ts';

/**
 * Colors of the lettering from the back to the front. Front to back: the inline ring covers the fill, the
 * fill covers the outline, and both cover the shade, which is thrown by the outlined letter where there is
 * an outline. `region` is what stays in sight of each, `whole` what is painted when they go on in order.
 */
export function layersOf(fill: Region, lettering: Lettering): LetterLayer[] {
  const { outline, inline, shade } = lettering;
  const layers: LetterLayer[] = [];
  // Mitered: a sign's outline keeps the corners of its letters crisp.
  const silhouette = outline ? union([fill, offset(fill, outline.width, 'miter')]) : fill;
  if (shade) {
    const by = shadeVector(shade);
    const whole = shade.kind === 'drop' ? dropShade(silhouette, by) : blockShade(silhouette, by);
    layers.push({ role: 'shade', finish: shade.finish, region: subtract(whole, silhouette), whole });
  }
  if (outline) {
    const region = subtract(silhouette, fill);
    layers.push({ role: 'outline', finish: outline.finish, region, whole: silhouette });
  }
  const ring = inline ? ringInside(fill, inline.inset, inline.width) : EMPTY;
  layers.push({ role: 'fill', finish: lettering.finish, region: subtract(fill, ring), whole: fill });
  if (inline) layers.push({ role: 'inline', finish: inline.finish, region: ring, whole: ring });
  return layers;
}

/** How far and where to the shade goes; its angle counts counterclockwise from the right. */
export function shadeVector({ angle, distance }: NonNullable<Lettering['shade']>): Point {
  return { x: distance * Math.cos(radians(angle)), y: distance * Math.sin(radians(angle)) };
}

/** The line that follows the border inside; where the stroke is too thin for it, there is none. */
const ringInside = (fill: Region, inset: number, width: number): Region =>
  subtract(offset(fill, -inset, 'miter'), offset(fill, -inset - width, 'miter'));
