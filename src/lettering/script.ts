import { featuresOfLine } from '../design/look.ts';
import type { Lettering, LetterLine } from '../design/schema.ts';

/**
 * Scripts that run from right to left, or whose letters change, join, stack or trade places beside each
 * other (Unicode Standard, chapters 9 to 16): setting their characters one by one from the left gives no
 * words. Marks that Unicode composes with no letter have no place of their own either.
 */
const ONLY_TOGETHER =
  /[\p{M}\p{scx=Adlm}\p{scx=Arab}\p{scx=Bali}\p{scx=Beng}\p{scx=Cham}\p{scx=Deva}\p{scx=Gujr}\p{scx=Guru}\p{scx=Hebr}\p{scx=Java}\p{scx=Khmr}\p{scx=Knda}\p{scx=Laoo}\p{scx=Mand}\p{scx=Mlym}\p{scx=Mong}\p{scx=Mymr}\p{scx=Nkoo}\p{scx=Orya}\p{scx=Rohg}\p{scx=Samr}\p{scx=Sinh}\p{scx=Syrc}\p{scx=Taml}\p{scx=Telu}\p{scx=Thaa}\p{scx=Thai}\p{scx=Tibt}]/u;
/** As many are named as show what is meant. */
const MOST_NAMED = 5;

/** Characters of a text that make sense only as they are shaped together, each once, the first few. */
export function onlyTogether(text: string): string[] {
  // None is Latin-1, and the engine takes 7 ms to read the pattern when it first asks.
  const found = [...text.normalize('NFC')].filter(
    (c) => c > 'ÿ' && ONLY_TOGETHER.test(c) && !/[\p{P}\p{N}]/u.test(c),
  );
  return [...new Set(found)].slice(0, MOST_NAMED);
}

const FROM_RIGHT =
  /[\p{Script=Adlam}\p{Script=Arabic}\p{Script=Hanifi_Rohingya}\p{Script=Hebrew}\p{Script=Mandaic}\p{Script=Nko}\p{Script=Samaritan}\p{Script=Syriac}\p{Script=Thaana}]/u;

/** Whether a line runs from the right as a whole, as its first letter does (UAX 9, rules P2 and P3). */
export function isFromRight(text: string): boolean {
  const first = /\p{L}/u.exec(text);
  return first !== null && FROM_RIGHT.test(first[0]);
}

/** Whether a line is set by the rules of its font for letters beside each other, not letter by letter. */
export const isShaped = ({ text, forms = [] }: LetterLine, features: readonly string[]): boolean =>
  features.length > 0 || forms.length > 0 || onlyTogether(text).length > 0;

/** Whether some letters have to be set together. */
export const needsShaper = (letterings: readonly Pick<Lettering, 'features' | 'lines'>[]): boolean =>
  letterings.some((lettering) =>
    lettering.lines.some((line) => isShaped(line, featuresOfLine(lettering, line))),
  );
