import { pictureOf } from '../../design/picture.ts';
import { asTyped } from '../../drawing/spelled.ts';
import { appliedToPath } from '../../drawing/transform.ts';
import type { Path } from '../../geometry/shape.ts';
import { readFont } from '../../lettering/font.ts';
import { codeAt } from '../../list/at.ts';
import { keptBy, keptByValue } from '../../list/keptBy.ts';
import { joined } from './arabic.ts';

/** A character's outline and advance, in ems. */
export interface ScriptGlyph {
  readonly path: Path;
  readonly advance: number;
}

/** Glyphs of the scripts that the typeface of the sheets lacks; null for a character that no font has. */
export type Scripts = (char: string) => ScriptGlyph | null;

/** Glyphs out of font files, of the first that has the character: a file is read when those before it have not. */
export function scriptsOf(files: readonly Uint8Array[]): Scripts {
  const fontIn = keptBy((bytes: Uint8Array) => {
    const read = readFont(bytes, '');
    return read.ok ? read.font : null;
  });
  return keptByValue((char: string) => {
    const file = files.find((bytes) => fontIn(bytes)?.has(char));
    const font = file && fontIn(file);
    if (!font) return null;
    const k = 1 / font.unitsPerEm;
    return {
      path: appliedToPath({ a: k, b: 0, c: 0, d: k, e: 0, f: 0 }, font.outline(char)),
      advance: font.advance(char) * k,
    };
  });
}

/** Packages of script fonts, the earlier one preferred, each cut into files by script or by stretch of codes. */
export const SCRIPT_PACKAGES = [
  'noto-sans',
  'noto-sans-hebrew',
  'noto-sans-arabic',
  'noto-sans-armenian',
  'noto-sans-georgian',
  'noto-sans-thai',
  'noto-sans-sc',
  'noto-sans-kr',
  'noto-emoji',
] as const;

export type ScriptPackage = (typeof SCRIPT_PACKAGES)[number];

/** Which codes a package's files hold: name of the cut, then CSS unicode ranges, as the packages list them. */
export type CodeRanges = Readonly<Record<string, string>>;

/** Latin stretches come with every package; one is enough. */
const onlyOnce = (owner: ScriptPackage, cut: string) => owner !== 'noto-sans' && cut.startsWith('latin');

/** Files, as package and name, with the glyphs of all characters of `text` that the typeface of the sheets lacks. */
export function scriptFiles(
  text: string,
  ranges: (owner: ScriptPackage) => CodeRanges,
): { readonly owner: ScriptPackage; readonly file: string }[] {
  const wanted = otherCharacters(text);
  if (wanted.length === 0) return [];
  const isWanted = holdsAny(wanted.map((char) => codeAt(char)));
  return SCRIPT_PACKAGES.flatMap((owner) =>
    Object.entries(ranges(owner))
      .filter(([cut, listed]) => !onlyOnce(owner, cut) && isWanted(listed))
      .map(([cut]) => ({ owner, file: `files/${owner}-${cut.replace(/[[\]]/g, '')}-400-normal.woff` })),
  );
}

/** Characters of a text that the typeface of the sheets lacks, each once. */
export function otherCharacters(text: string): string[] {
  // Pictures are told by their names where anything is written of them.
  return [...new Set(text.normalize('NFC'))].filter((char) => !asTyped(char) && pictureOf(char) === null);
}

/** A text of which some characters have no letters anywhere: a sign like them, or `?`, is printed in their place. */
export interface Unwritten {
  readonly text: string;
  readonly characters: readonly string[];
}

/** Texts within `value` that hold what neither the typeface of the sheets nor `scripts` have, each once. */
export function unwrittenIn(value: unknown, scripts: Scripts): Unwritten[] {
  return [...new Set(textsIn(value))].flatMap((text) => {
    const characters = otherCharacters(joined(text.normalize('NFC'))).filter(
      (char) => scripts(char) === null,
    );
    return characters.length === 0 ? [] : [{ text, characters }];
  });
}

/** Every text within a value. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(textsIn) : [];
}

/**
 * Whether one of some codes lies in a list of CSS ranges such as `U+0301,U+0400-045F`. Lists have thousands of them: codes
 * by themselves are looked for by a pattern, and ranges alone are read.
 */
function holdsAny(codes: readonly number[]): (listed: string) => boolean {
  const alone = new RegExp(`U\\+0*(${codes.map((code) => code.toString(16)).join('|')})(?![-\\da-f])`, 'i');
  return (listed) =>
    alone.test(listed) ||
    [...listed.matchAll(/U\+([\da-f]+)-([\da-f]+)/gi)].some(([, from = '', to = '']) =>
      codes.some((code) => code >= Number.parseInt(from, 16) && code <= Number.parseInt(to, 16)),
    );
}
