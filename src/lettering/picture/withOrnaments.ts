import { transformPath } from '../../geometry/path.ts';
import type { Path } from '../../geometry/shape.ts';
import type { Font } from '../font.ts';
import { ORNAMENTS, type Ornament } from './ornaments.ts';
import { pathOfOutline } from './outline.ts';

/** White beside a drawing, thousandths of the cap height: as much as stands beside a round capital. Our own choice. */
const BESIDE = 60;

const BY_CHARACTER: ReadonlyMap<string, Ornament> = new Map(ORNAMENTS.map((one) => [one.character, one]));

/**
 * A font that draws ornaments for the characters that it lacks and that mean them: as high as its capitals, so that
 * they are sized, lined up, bent, bridged, sawn and painted like letters.
 */
export function withOrnaments(font: Font): Font {
  const scale = font.capHeight / 1000;
  const paths = new Map<Ornament, Path>();
  const of = (character: string) => (font.has(character) ? undefined : BY_CHARACTER.get(character));
  const pathOf = (one: Ornament): Path => {
    const known = paths.get(one);
    if (known) return known;
    const path = transformPath(pathOfOutline(one.outline), ({ x, y }) => ({
      x: (x + BESIDE) * scale,
      y: font.foot + y * scale,
    }));
    paths.set(one, path);
    return path;
  };
  return {
    ...font,
    has: (character) => of(character) !== undefined || font.has(character),
    advance: (character) => {
      const own = of(character);
      return own ? (own.width + 2 * BESIDE) * scale : font.advance(character);
    },
    outline: (character) => {
      const own = of(character);
      return own ? pathOf(own) : font.outline(character);
    },
  };
}
