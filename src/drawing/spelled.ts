import { CHARACTERS } from './typeface.ts';

const HELD: ReadonlySet<string> = new Set(CHARACTERS);

/** Signs that the typeface of the sheets lacks, and what is read in their place. */
const SPELLED: ReadonlyMap<string, string> = new Map([
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['→', '>'],
  ['←', '<'],
  ['≤', '<='],
  ['≥', '>='],
  ['≈', '~'],
  ['‚', ','],
  ['′', "'"],
]);

/** Letters that Unicode does not take apart, and the plain letter they are read as. */
const BARE: ReadonlyMap<string, string> = new Map([
  ['ł', 'l'],
  ['Ł', 'L'],
  ['đ', 'd'],
  ['Đ', 'D'],
]);

/** Signs that only tell how others are drawn: joiners, directions, whether a sign is a picture. They leave no ink. */
const UNSEEN = /[\p{Cf}\p{Variation_Selector}]/u;

const UNKNOWN = '?';

/** What sets a character as it was typed; null when the typeface lacks it. */
function exact(char: string): string | null {
  // What is known by name is looked up first: the engine takes 12 ms to read the pattern below when it first asks.
  const known = HELD.has(char) ? char : SPELLED.get(char);
  if (known !== undefined) return known;
  if (UNSEEN.test(char)) return '';
  return char < ' ' || /\s/u.test(char) ? ' ' : null;
}

function nearest(char: string): string {
  const same = exact(char);
  if (same !== null) return same;
  const bare = BARE.get(char) ?? char.normalize('NFKD').replace(/\p{Mn}/gu, '');
  if (bare === char || bare === '') return UNKNOWN;
  return [...bare].map(nearest).join('');
}

/** Most texts are ASCII, which every typeface has. */
const isPlain = (text: string): boolean => /^[ -~]*$/.test(text);

/**
 * A text in characters that the typeface of the sheets has. Letters with marks that it lacks lose the mark, a few
 * signs are spelled out, and what is left shows as `?`: nothing vanishes, nothing fails.
 */
export const spelled = (text: string): string =>
  isPlain(text) ? text : [...text.normalize('NFC')].map(nearest).join('');

/** Whether the typeface of the sheets sets every character of a text as it was typed. */
export const asTyped = (text: string): boolean =>
  isPlain(text) || [...text].every((char) => exact(char) !== null);
