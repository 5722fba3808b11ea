import { FEATURE_TAGS } from '../design/features.ts';
import { MOST_FORMS } from '../design/limits.ts';
import type { Path } from '../geometry/shape.ts';
import type { Font } from './font.ts';

/** A form that a font has for a letter: which one of a feature's, and what it looks like, in font units. */
export interface LetterForm {
  /** Null for the letter as it is without a choice. */
  readonly chosen: { readonly tag: string; readonly value: number } | null;
  readonly outline: Path;
}

/** Of one letter alone they change nothing, or only how others beside it are set. */
const OF_SEVERAL: readonly string[] = ['liga', 'dlig', 'hlig', 'calt', 'frac', 'ordn', 'pnum', 'tnum'];

/** Features by which one letter may have another form: all alternates, those that can be chosen, and single variants. */
export const hasForms = (tag: string): boolean =>
  /^(aalt|cv\d\d)$/.test(tag) || (FEATURE_TAGS.some((known) => known === tag) && !OF_SEVERAL.includes(tag));

/** The forms that a font has for a letter by itself, each once, its usual one first; that alone where nothing shapes. */
export function formsOf(font: Font, character: string): LetterForm[] {
  const { shape } = font;
  const keyBy = (tag: string, value: number): string | undefined =>
    shape?.({ characters: [character], sizes: [-1], spaced: false, features: [{ tag, value }] })[0]?.key;
  const usual = keyBy('kern', 0);
  const found = new Map([[usual, null as LetterForm['chosen']]]);
  for (const { tag } of font.features().filter((one) => hasForms(one.tag))) {
    const own = new Set<string | undefined>([usual]);
    for (let value = 1; value <= MOST_FORMS; value += 1) {
      const key = keyBy(tag, value);
      if (own.has(key)) break;
      own.add(key);
      if (!found.has(key)) found.set(key, { tag, value });
    }
  }
  return [...found].map(([key, chosen]) => ({ chosen, outline: font.outline(key ?? character) }));
}
