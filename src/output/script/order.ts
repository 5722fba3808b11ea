import bidiFactory from 'bidi-js';

const bidi = bidiFactory();

/**
 * A character beyond the first plane stands as one neutral unit while levels are found: hardly a letter there
 * belongs to a script that runs to the left.
 */
const NEUTRAL = '\ufffc';
const RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}]/u;

/**
 * The characters of a line in the order in which they stand from left to right: the Unicode Bidirectional
 * Algorithm (UAX 9), in a line that runs from the left as the packet's languages do. Brackets in stretches that run to the left are mirrored.
 */
export function fromLeft(text: string): string {
  if (!RIGHT_TO_LEFT.test(text)) return text;
  const chars = [...text];
  const line = chars.map((char) => (char.length > 1 ? NEUTRAL : char)).join('');
  const levels = bidi.getEmbeddingLevels(line, 'ltr');
  const mirrored = bidi.getMirroredCharactersMap(line, levels.levels);
  return bidi
    .getReorderedIndices(line, levels)
    .map((i) => mirrored.get(i) ?? chars[i] ?? '')
    .join('');
}
