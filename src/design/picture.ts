import type { Lettering, Picture } from './schema.ts';

/** The first character for private use in Unicode's first plane; the number of a picture counts from it. */
const FIRST = 0xe000;
const LAST = 0xf8ff;

/** The character that stands for a picture in a text. */
export const characterOf = (picture: string): string =>
  String.fromCharCode(FIRST + Number(picture.slice(picture.lastIndexOf('-') + 1)));

/** The id of the picture that a character stands for; null for other characters. */
export function pictureOf(character: string): string | null {
  const code = character.charCodeAt(0);
  return code > FIRST && code <= LAST ? `picture-${code - FIRST}` : null;
}

const PICTURES = /[\uE001-\uF8FF]/g;

/** Whether pictures stand among the letters of a text. */
export const hasPictures = (text: string): boolean => text.search(PICTURES) >= 0;

/** The pictures that stand in some lettering. */
export const picturesIn = (
  { lines }: Pick<Lettering, 'lines'>,
  pictures: readonly Picture[] = [],
): Picture[] => pictures.filter(({ id }) => lines.some(({ text }) => text.includes(characterOf(id))));

/** A text with something in the place of each picture. */
export const withPicturesTold = (text: string, told: (picture: string) => string): string =>
  text.replace(PICTURES, (character) => told(pictureOf(character) ?? character));

/** A text with pictures told by their names. */
export const textTold = (text: string, pictures: readonly Picture[] = []): string =>
  withPicturesTold(text, (id) => `[${pictures.find((picture) => picture.id === id)?.name || id}]`);
