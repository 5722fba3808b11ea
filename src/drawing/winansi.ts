import { codeAt } from '../list/at.ts';

/** Codes 128 to 159 of WinAnsi (ISO 32000-1, annex D.2); everything else from 32 to 255 is Latin-1. */
const UPPER: readonly (readonly [number, string])[] = [
  [128, '€'],
  [130, '‚'],
  [131, 'ƒ'],
  [132, '„'],
  [133, '…'],
  [134, '†'],
  [135, '‡'],
  [136, 'ˆ'],
  [137, '‰'],
  [138, 'Š'],
  [139, '‹'],
  [140, 'Œ'],
  [142, 'Ž'],
  [145, '‘'],
  [146, '’'],
  [147, '“'],
  [148, '”'],
  [149, '•'],
  [150, '–'],
  [151, '—'],
  [152, '˜'],
  [153, '™'],
  [154, 'š'],
  [155, '›'],
  [156, 'œ'],
  [158, 'ž'],
  [159, 'Ÿ'],
];

const CODE_OF: ReadonlyMap<string, number> = new Map(UPPER.map(([code, char]) => [char, code]));

/** Signs that the standard typefaces lack, and what is read in their place. */
const SPELLED: ReadonlyMap<string, string> = new Map([
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['⁄', '/'],
  ['−', '-'],
  ['→', '>'],
  ['←', '<'],
  ['≤', '<='],
  ['≥', '>='],
  ['≈', '~'],
  ['′', "'"],
  ['″', '"'],
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

const UNKNOWN = '?'.charCodeAt(0);

/** Codes that set a character as it was typed; null when WinAnsi lacks it. */
function exactCodes(char: string): number[] | null {
  const code = codeAt(char);
  if ((code >= 32 && code < 127) || (code >= 160 && code < 256)) return [code];
  if (UNSEEN.test(char)) return [];
  const upper = CODE_OF.get(char);
  if (upper !== undefined) return [upper];
  if (code < 32 || /\s/u.test(char)) return [32];
  const spelled = SPELLED.get(char);
  return spelled === undefined ? null : [...spelled].map((c) => c.charCodeAt(0));
}

function codesOfCharacter(char: string): number[] {
  const exact = exactCodes(char);
  if (exact) return exact;
  const bare = BARE.get(char) ?? char.normalize('NFKD').replace(/\p{Mn}/gu, '');
  if (bare === char || bare === '') return [UNKNOWN];
  return [...bare].flatMap(codesOfCharacter);
}

/** Most texts are ASCII, which every typeface and encoding has alike. */
const isPlain = (text: string): boolean => /^[ -~]*$/.test(text);

/**
 * Codes of a text in WinAnsi, the encoding of the standard PDF typefaces. Letters with marks that it lacks
 * lose the mark, a few signs are spelled out, and what is left shows as `?`: nothing vanishes, nothing fails.
 */
export function winAnsi(text: string): number[] {
  if (isPlain(text)) return Array.from(text, (char) => char.charCodeAt(0));
  return [...text.normalize('NFC')].flatMap(codesOfCharacter);
}

/** Whether WinAnsi sets every character of a text as it was typed. */
export const inWinAnsi = (text: string): boolean =>
  isPlain(text) || [...text].every((char) => exactCodes(char) !== null);
