import { MOST_PICTURE_COLORS, PICTURE_HEIGHT } from '../../design/limits.ts';
import type { Picture } from '../../design/schema.ts';
import { lightOf } from '../../drawing/color.ts';
import type { Color } from '../../drawing/drawing.ts';
import { seenOfEach, subtract, union } from '../../geometry/clip.ts';
import { areaOf, boxOf, EMPTY, ringsOf } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { PictureProblem } from './svg/problem.ts';

/** Height at which regions of a picture are worked: their flatness is then a 20,000th of it. */
export const WORKED_HEIGHT: Mm = 1000;

/** A shape as it is laid over those before it. */
export interface ColoredShape {
  readonly color: Color;
  readonly region: Region;
}

/** A picture that no design holds yet. */
export interface OpenedPicture extends Pick<Picture, 'width'> {
  readonly colors: readonly Pick<Picture['colors'][number], 'color' | 'outline'>[];
}

/** A color with what is seen of it, and what is painted of it when colors go on in order. */
interface Laid extends ColoredShape {
  readonly whole: Region;
}

/**
 * Shapes laid over each other as one outline for each color, from the back to the front: what is seen of it, and what
 * of it lies under those that follow. More colors than a picture holds are merged, the smallest into the nearest.
 */
export function pictureOfShapes(shapes: readonly ColoredShape[]): OpenedPicture {
  let laid = byColor(seenOf(shapes));
  while (laid.length > MOST_PICTURE_COLORS) laid = byColor(merged(laid));
  const box = boxOf(laid.flatMap(({ region }) => region));
  if (!box || box.h <= 0) throw new PictureProblem({ code: 'nothing' });
  const k = PICTURE_HEIGHT / box.h;
  const width = Math.round(box.w * k);
  if (width > 100 * PICTURE_HEIGHT || width < PICTURE_HEIGHT / 100)
    throw new PictureProblem({ code: 'nothing' });
  const outlineOf = (region: Region): string =>
    ringsOf(region)
      .map((ring) => ring.map(({ x, y }) => `${Math.round((x - box.x) * k)} ${Math.round((y - box.y) * k)}`))
      .map((places) => places.filter((place, i) => place !== places.at(i - 1)))
      .filter((places) => places.length > 2)
      .map((places) => `M${places.join('L')}Z`)
      .join('');
  const colors = laid
    .map(({ color, whole }) => ({ color, outline: outlineOf(whole) }))
    .filter(({ outline }) => outline !== '');
  if (colors.length === 0) throw new PictureProblem({ code: 'nothing' });
  if (colors.some(({ outline }) => outline.length > MOST_OUTLINE))
    throw new PictureProblem({ code: 'too-much' });
  return { width, colors };
}

/** As many characters as the design's form takes for a color. */
const MOST_OUTLINE = 400_000;

/** What is seen of each stretch of shapes of one color: less all that is laid over it. */
function seenOf(shapes: readonly ColoredShape[]): Laid[] {
  const stretches: { color: Color; regions: Region[] }[] = [];
  for (const { color, region } of shapes) {
    const last = stretches.at(-1);
    if (last?.color === color) last.regions.push(region);
    else stretches.push({ color, regions: [region] });
  }
  const wholes = stretches.map(({ regions }) => union(regions));
  const seen = seenOfEach(wholes);
  return stretches.map(({ color }, i) => ({ color, region: pick(seen, i), whole: pick(wholes, i) }));
}

/** One for each color, where the first of it lies; none runs over what is seen of one before it. */
function byColor(laid: readonly Laid[]): Laid[] {
  const shown = laid.filter(({ region }) => region.length > 0);
  let before: Region = EMPTY;
  return [...new Set(shown.map(({ color }) => color))].map((color) => {
    const own = shown.filter((one) => one.color === color);
    const region = union(own.map((one) => one.region));
    const whole = subtract(union(own.map((one) => one.whole)), before);
    before = union([before, region]);
    return { color, region, whole };
  });
}

/** The color of the least area takes the one that it is nearest to, by their light. */
function merged(laid: readonly Laid[]): Laid[] {
  const [least] = laid.toSorted((a, b) => areaOf(a.region) - areaOf(b.region));
  const far = (a: Color, b: Color) => {
    const [p, q] = [lightOf(a), lightOf(b)];
    return Math.hypot(
      Math.cbrt(p.r) - Math.cbrt(q.r),
      Math.cbrt(p.g) - Math.cbrt(q.g),
      Math.cbrt(p.b) - Math.cbrt(q.b),
    );
  };
  if (!least) return [...laid];
  const others = laid.filter((one) => one !== least).map(({ color }) => color);
  const nearest = pick(
    others.toSorted((a, b) => far(a, least.color) - far(b, least.color)),
    0,
  );
  return laid.map((one) => (one === least ? { ...one, color: nearest } : one));
}
