import { pictureOf } from '../../design/picture.ts';
import { asTyped } from '../../drawing/spelled.ts';
import { appliedToPath } from '../../drawing/transform.ts';
import type { Path } from '../../geometry/shape.ts';
import { type Font, readFont } from '../../lettering/font.ts';
import { codeAt } from '../../list/at.ts';
import { joined } from './arabic.ts';

/** A character's outline and advance, in ems. */
export interface ScriptGlyph {
  readonly path: Path;
  readonly advance: number;
}

/** Glyphs of the scripts that the typeface of the sheets lacks; null for a character that no font has. */
export type Scripts = (char: string) => ScriptGlyph | null;

/** Glyphs out of font files, of the first that has the character. */
export function scriptsOf(files: readonly Uint8Array[]): Scripts {
  const fonts = files.flatMap((bytes): Font[] => {
    const read = readFont(bytes, '');
    return read.ok ? [read.font] : [];
  });
  const found = new Map<string, ScriptGlyph | null>();
  return (char) => {
    const before = found.get(char);
    if (before !== undefined) return before;
    const font = fonts.find((f) => f.has(char));
    const k = font ? 1 / font.unitsPerEm : 0;
    const glyph = font
      ? {
          path: appliedToPath({ a: k, b: 0, c: 0, d: k, e: 0, f: 0 }, font.outline(char)),
          advance: font.advance(char) * k,
        }
      : null;
    found.set(char, glyph);
    return glyph;
  };
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
  const codes = wanted.map((char) => codeAt(char));
  return SCRIPT_PACKAGES.flatMap((owner) =>
    Object.entries(ranges(owner))
      .filter(([cut, listed]) => !onlyOnce(owner, cut) && codes.some(within(listed)))
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

/** Whether a code lies in a list of CSS ranges such as `U+0301,U+0400-045F`. */
function within(listed: string): (code: number) => boolean {
  const spans = listed.split(',').map((span) => {
    const [from = '', to = from] = span.replace('U+', '').split('-');
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)] as const;
  });
  return (code) => spans.some(([from, to]) => code >= from && code <= to);
}
