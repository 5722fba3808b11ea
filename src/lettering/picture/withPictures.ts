import { PICTURE_HEIGHT } from '../../design/limits.ts';
import { characterOf } from '../../design/picture.ts';
import type { Picture } from '../../design/schema.ts';
import { transformPath } from '../../geometry/path.ts';
import type { Path } from '../../geometry/shape.ts';
import type { Font } from '../font.ts';
import { ORNAMENTS } from './ornaments.ts';
import { pathOfOutline } from './outline.ts';

/** What stands for a character: its width over its height, and its colors from the back to the front. */
interface Drawn {
  readonly aspect: number;
  /** Units a height. */
  readonly units: number;
  readonly colors: readonly { readonly finish: string | null; readonly outline: string }[];
}

/** A color of a picture in font units: what is painted of it. */
export interface PicturePath {
  /** Null: as the letters. */
  readonly finish: string | null;
  readonly path: Path;
}

/** A font in which some characters are pictures. */
export interface PictureFont extends Font {
  /** Colors of a picture from the back to the front; null for letters, and for what is all painted as they are. */
  readonly colors: (key: string) => readonly PicturePath[] | null;
}

/** White beside a drawing, share of the cap height: as much as stands beside a round capital. Our own choice. */
const BESIDE = 0.06;

const ORNAMENT_BY_CHARACTER: ReadonlyMap<string, Drawn> = new Map(
  ORNAMENTS.map(({ character, width, outline }) => [
    character,
    { aspect: width / 1000, units: 1000, colors: [{ finish: null, outline }] },
  ]),
);

/**
 * A font that draws the pictures of a design, and ornaments for the characters that it lacks and that mean them: as
 * high as its capitals, so that they are sized, lined up, bent, bridged, sawn and painted like letters.
 */
export function withPictures(font: Font, pictures: readonly Picture[]): PictureFont {
  const own = new Map<string, Drawn>(
    pictures.map(({ id, width, colors }) => [
      characterOf(id),
      { aspect: width / PICTURE_HEIGHT, units: PICTURE_HEIGHT, colors },
    ]),
  );
  const of = (character: string): Drawn | undefined =>
    own.get(character) ?? (font.has(character) ? undefined : ORNAMENT_BY_CHARACTER.get(character));
  const known = new Map<string, readonly PicturePath[]>();
  const pathsOf = (character: string, { units, colors }: Drawn): readonly PicturePath[] => {
    const before = known.get(character);
    if (before) return before;
    const scale = font.capHeight / units;
    const paths = colors.map(({ finish, outline }) => ({
      finish,
      path: transformPath(pathOfOutline(outline), ({ x, y }) => ({
        x: x * scale + BESIDE * font.capHeight,
        y: font.foot + y * scale,
      })),
    }));
    known.set(character, paths);
    return paths;
  };
  const { shape } = font;
  return {
    ...font,
    shape: shape && ((line) => shape({ ...line, apart: (character) => of(character) !== undefined })),
    has: (character) => of(character) !== undefined || font.has(character),
    advance: (character) => {
      const drawn = of(character);
      return drawn ? (drawn.aspect + 2 * BESIDE) * font.capHeight : font.advance(character);
    },
    outline: (character) => {
      const drawn = of(character);
      return drawn ? pathsOf(character, drawn).flatMap(({ path }) => path) : font.outline(character);
    },
    colors: (character) => {
      const drawn = of(character);
      const painted = drawn?.colors.some(({ finish }) => finish !== null);
      return drawn && painted ? pathsOf(character, drawn) : null;
    },
  };
}
