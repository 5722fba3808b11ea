import { seenOfEach, subtract, union } from '../../geometry/clip.ts';
import type { Region } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import type { PlacedGlyph } from '../result.ts';

/** A color of the lettering: what is seen of it, and what is painted. */
interface Color {
  readonly finish: string;
  readonly region: Region;
  readonly whole: Region;
}

/**
 * What the letters, and the colors of pictures among them, come to as layers, from the back to the front: `fill` of the
 * letters and of all that is painted as they are, then one layer for each other finish, in the order in which pictures
 * first have it. Colors that share a finish are one, laid where the first of them lies.
 *
 * `whole` of a layer runs on under those that follow, as the picture has it, and never over one before it.
 *
 * @param sawn all of them are sawn as one and the other colors painted on that
 */
export function colorLayers(
  glyphs: readonly PlacedGlyph[],
  finish: string,
  sawn: boolean,
): (Color & { readonly role: 'fill' | 'picture' })[] {
  const plain = glyphs.filter(({ colors }) => colors === null).flatMap(({ region }) => region);
  const found: Color[] = [
    ...(plain.length > 0 ? [{ finish, region: plain, whole: plain }] : []),
    ...glyphs.flatMap(({ colors }) => (colors === null ? [] : seenOf(colors, finish))),
  ];
  const finishes = [...new Set([finish, ...found.map((color) => color.finish)])];
  const seen = finishes.map((one) => union(found.filter((c) => c.finish === one).map((c) => c.region)));
  const all = union(seen);
  return finishes.flatMap((one, i) => {
    const region = pick(seen, i);
    const role = i === 0 ? 'fill' : 'picture';
    const painted = () =>
      subtract(union(found.filter((c) => c.finish === one).map((c) => c.whole)), union(seen.slice(0, i)));
    const whole = i === 0 && sawn ? all : painted();
    return whole.length === 0 ? [] : [{ role, finish: one, region, whole }];
  });
}

/** What is seen of the colors of a picture: each less those that are laid over it. */
function seenOf(colors: NonNullable<PlacedGlyph['colors']>, finish: string): Color[] {
  const seen = seenOfEach(colors.map(({ whole }) => whole));
  return colors.map(({ finish: own, whole }, i) => ({ finish: own ?? finish, region: pick(seen, i), whole }));
}
