import { pick } from '../../list/at.ts';

/** A glyph and where its origin stands, in font units. */
export interface PlacedGlyphId {
  readonly glyph: number;
  readonly x: number;
  readonly y: number;
}

/** Glyphs that a font draws for letters that it sets together. */
export interface Form {
  readonly advance: number;
  readonly glyphs: readonly PlacedGlyphId[];
}

/**
 * A font draws what it is told by a key: a character by itself, or a form by this. No text holds it: it begins with what
 * Unicode keeps from being a character, and is longer than one.
 */
const MARK = '\uffff';

export const keyOf = ({ advance, glyphs }: Form): string =>
  `${MARK}${[advance, ...glyphs.flatMap(({ glyph, x, y }) => [glyph, x, y])].join(' ')}`;

/** The form that a key tells; null for the key of a character. */
export function formOf(key: string): Form | null {
  if (key.length === 1 || !key.startsWith(MARK)) return null;
  const numbers = key.slice(1).split(' ').map(Number);
  const glyphs = Array.from({ length: (numbers.length - 1) / 3 }, (_, i) => ({
    glyph: pick(numbers, 3 * i + 1),
    x: pick(numbers, 3 * i + 2),
    y: pick(numbers, 3 * i + 3),
  }));
  return { advance: pick(numbers, 0), glyphs };
}
