import type { Lettering } from '../design/schema.ts';
import { offset, subtract, union } from '../geometry/clip.ts';
import { EMPTY, translateRegion } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import type { ShapeMemory } from '../geometry/shapeMemory.ts';
import { sweep } from '../geometry/sweep.ts';
import { type Mm, radians } from '../measure/units.ts';
import { colorLayers } from './picture/colors.ts';
import type { LetterLayer, PlacedGlyph } from './result.ts';
import { eachShape } from './shapes.ts';

/**
 * Colors of the lettering from the back to the front. Front to back: colors of pictures and the inline ring cover the
 * fill, the fill covers the outline, and both cover the shade, which is thrown by the outlined letter where there is
 * an outline. `region` is what stays in sight of each, `whole` what is painted when they go on in order.
 */
export function layersOf(
  fill: Region,
  lettering: Lettering,
  memory: ShapeMemory,
  glyphs: readonly PlacedGlyph[] = [],
): LetterLayer[] {
  const { outline, inline, shade } = lettering;
  const layers: LetterLayer[] = [];
  const silhouette = outline ? outlined(fill, outline.width, memory) : fill;
  if (shade) {
    const by = shadeVector(shade);
    // A copy beside the letters, as a light from the other side would throw it; or the letters drawn out to blocks.
    const cast = (letters: Region) =>
      shade.kind === 'drop' ? translateRegion(letters, by.x, by.y) : sweep(letters, { x: 0, y: 0 }, by);
    const whole = eachShape(
      memory,
      `${shade.kind} ${shade.angle} ${shade.distance}`,
      silhouette,
      shade.distance,
      (letters) => union([cast(letters)]),
    );
    layers.push({ role: 'shade', finish: shade.finish, region: less(whole, silhouette, memory), whole });
  }
  if (outline) {
    layers.push({
      role: 'outline',
      finish: outline.finish,
      region: less(silhouette, fill, memory),
      whole: silhouette,
    });
  }
  const colored = glyphs.some(({ colors }) => colors !== null);
  const colors: readonly LetterLayer[] = colored
    ? colorLayers(glyphs, lettering.finish, lettering.make === 'cut-out')
    : [{ role: 'fill', finish: lettering.finish, region: fill, whole: fill }];
  for (const color of colors) {
    const ring =
      inline && color.role === 'fill' ? ringInside(color.region, inline.inset, inline.width, memory) : EMPTY;
    layers.push({ ...color, region: less(color.region, ring, memory) });
    if (inline && color.role === 'fill')
      layers.push({ role: 'inline', finish: inline.finish, region: ring, whole: ring });
  }
  return layers;
}

/** Mitered: a sign's outline keeps the corners of its letters crisp. Sharp ones run out up to five widths. */
const outlined = (fill: Region, width: Mm, memory: ShapeMemory): Region =>
  eachShape(memory, `outline ${width}`, fill, 5 * width, (letters) =>
    union([letters, offset(letters, width, 'miter')]),
  );

/** What of a layer lies beside the one that covers it. */
const less = (layer: Region, cover: Region, memory: ShapeMemory): Region =>
  cover.length === 0 ? layer : eachShape(memory, 'less', layer, 0, subtract, cover);

/** How far and where to the shade goes; its angle counts counterclockwise from the right. */
export function shadeVector({ angle, distance }: NonNullable<Lettering['shade']>): Point {
  return { x: distance * Math.cos(radians(angle)), y: distance * Math.sin(radians(angle)) };
}

/** The line that follows the border inside; where the stroke is too thin for it, there is none. */
const ringInside = (fill: Region, inset: Mm, width: Mm, memory: ShapeMemory): Region =>
  eachShape(memory, `inline ${inset} ${width}`, fill, 0, (letters) =>
    subtract(offset(letters, -inset, 'miter'), offset(letters, -inset - width, 'miter')),
  );
