import bidiFactory, { type BidiCharTypeName } from 'bidi-js';

const bidi = bidiFactory();

/** Which way a line runs as a whole: from the left, or as its first letter that has a direction does. */
export type Base = 'ltr' | 'auto';

/** A line of characters by the Unicode Bidirectional Algorithm (UAX 9). */
export interface Directed {
  /** Embedding levels, one a character: those of odd levels run from the right. */
  readonly levels: readonly number[];
  /** Indices of the characters as they stand from left to right. */
  readonly order: readonly number[];
  /** By index: what is drawn in the place of a bracket in a stretch that runs from the right. */
  readonly mirrored: ReadonlyMap<number, string>;
}

/**
 * The library reads units of UTF-16. A character of two is handed to it as one of the same class; classes that are not
 * listed stand beyond the first plane nowhere that letters do, and are neutral here.
 */
const SAME_CLASS: Readonly<Partial<Record<BidiCharTypeName, string>>> = {
  L: 'a',
  R: '\u05d0',
  AL: '\u0627',
  EN: '1',
  AN: '\u0661',
  NSM: '\u0300',
  BN: '\u200b',
};
const NEUTRAL = '\ufffc';
const unitOf = (char: string): string =>
  char.length === 1 ? char : (SAME_CLASS[bidi.getBidiCharTypeName(char)] ?? NEUTRAL);

export function directed(chars: readonly string[], base: Base): Directed {
  const line = chars.map(unitOf).join('');
  const found = bidi.getEmbeddingLevels(line, base);
  return {
    levels: [...found.levels],
    order: bidi.getReorderedIndices(line, found),
    mirrored: bidi.getMirroredCharactersMap(line, found.levels),
  };
}
