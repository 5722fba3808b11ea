import type { Lettering } from '../design/schema.ts';
import { offset, subtract, union } from '../geometry/clip.ts';
import { boxesMeet, boxOf, EMPTY } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { type Mm, radians } from '../measure/units.ts';
import { letterByLetter } from './cluster.ts';
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
  const silhouette = outline ? outlined(fill, outline.width) : fill;
  if (shade) {
    const by = shadeVector(shade);
    const cast = shade.kind === 'drop' ? dropShade : blockShade;
    const whole = letterByLetter(silhouette, shade.distance, (letters) => union([cast(letters, by)]));
    layers.push({ role: 'shade', finish: shade.finish, region: less(whole, silhouette), whole });
  }
  if (outline) {
    layers.push({
      role: 'outline',
      finish: outline.finish,
      region: less(silhouette, fill),
      whole: silhouette,
    });
  }
  const ring = inline ? ringInside(fill, inline.inset, inline.width) : EMPTY;
  layers.push({ role: 'fill', finish: lettering.finish, region: less(fill, ring), whole: fill });
  if (inline) layers.push({ role: 'inline', finish: inline.finish, region: ring, whole: ring });
  return layers;
}

/** Mitered: a sign's outline keeps the corners of its letters crisp. Sharp ones run out up to five widths. */
const outlined = (fill: Region, width: Mm): Region =>
  letterByLetter(fill, 5 * width, (letters) => union([letters, offset(letters, width, 'miter')]));

/** What of a layer lies beside the one that covers it. */
const less = (layer: Region, cover: Region): Region =>
  letterByLetter(layer, 0, (letters) => {
    const box = boxOf(letters);
    const near = box ? cover.filter(({ outer }) => boxesMeet(boxOfPoints(outer), box)) : [];
    return subtract(letters, near);
  });

/** How far and where to the shade goes; its angle counts counterclockwise from the right. */
export function shadeVector({ angle, distance }: NonNullable<Lettering['shade']>): Point {
  return { x: distance * Math.cos(radians(angle)), y: distance * Math.sin(radians(angle)) };
}

/** The line that follows the border inside; where the stroke is too thin for it, there is none. */
const ringInside = (fill: Region, inset: Mm, width: Mm): Region =>
  letterByLetter(fill, 0, (letters) =>
    subtract(offset(letters, -inset, 'miter'), offset(letters, -inset - width, 'miter')),
  );
