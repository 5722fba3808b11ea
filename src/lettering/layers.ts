import type { Look } from '../design/look.ts';
import type { Lettering } from '../design/schema.ts';
import { offset, subtract, union } from '../geometry/clip.ts';
import { EMPTY, translateRegion } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import type { ShapeMemory } from '../geometry/shapeMemory.ts';
import { sweep } from '../geometry/sweep.ts';
import { type Mm, radians } from '../measure/units.ts';
import { colorLayers } from './picture/colors.ts';
import { type LetterLayer, type OwnRole, type PlacedGlyph, type Role, roleOf } from './result.ts';
import { eachShape } from './shapes.ts';

/** Letters that look alike, with all that they cover. */
export interface LookedAlike {
  readonly look: Look;
  /** As `PlacedGlyph` has it. */
  readonly number: number;
  readonly glyphs: readonly PlacedGlyph[];
  readonly silhouette: Region;
  /** Bands behind its lines. */
  readonly ribbons: Region;
}

/** Colors of the whole lettering from the back to the front: look by look, each over those before it. */
export function layersOf(all: readonly LookedAlike[], sawn: boolean, memory: ShapeMemory): LetterLayer[] {
  let pictures = 0;
  const named = all.map((alike) =>
    layersOfLook(alike, sawn, memory).map((layer): LetterLayer => {
      const role: Role =
        layer.role === 'picture' ? `picture-${++pictures}` : roleOf(layer.role, alike.number);
      return { ...layer, role };
    }),
  );
  return named.flatMap((layers, i) => {
    const over = named.slice(i + 1).flatMap((later) => later.flatMap(({ whole }) => whole));
    return layers.map((layer) => ({ ...layer, region: less(layer.region, over, memory) }));
  });
}

type LookLayer = Omit<LetterLayer, 'role'> & { readonly role: OwnRole | 'picture' };

/**
 * Colors of letters of one look from the back to the front. Front to back: colors of pictures and the inline ring cover the
 * fill, the fill covers the outline, and both cover the shade, which is thrown by the outlined letter where there is
 * an outline. `region` is what stays in sight of each, `whole` what is painted when they go on in order.
 */
function layersOfLook(
  { look, glyphs, silhouette: fill, ribbons }: LookedAlike,
  sawn: boolean,
  memory: ShapeMemory,
): LookLayer[] {
  const { outline, inline, shade, ribbon, finish } = look;
  const layers: LookLayer[] = [];
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
  if (ribbon) {
    const whole = union([ribbons]);
    const over = [...silhouette, ...layers.flatMap((layer) => layer.whole)];
    layers.unshift({ role: 'ribbon', finish: ribbon.finish, region: less(whole, over, memory), whole });
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
  const colors: readonly LookLayer[] = colored
    ? colorLayers(glyphs, finish, sawn)
    : [{ role: 'fill', finish, region: fill, whole: fill }];
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
