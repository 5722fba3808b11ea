import { useEffect, useState } from 'react';
import type { Design } from '../../../design/schema.ts';
import type { LetterForm } from '../../../lettering/forms.ts';
import { bytesOfBase64 } from '../../../plan/base64.ts';
import { fontBytes } from '../../shipped/fonts.ts';
import { type FontFacts, NO_FACTS } from './fontFacts.ts';
import { formsInFont, lookAtFont } from './lookAtFont.ts';

/** What was found of fonts, by what was asked and the font: its id, or its data where it is the person's own. */
const known = new Map<string, Promise<unknown>>();

/** What a worker finds in a font, asked for once; `otherwise` until it is there. */
function useFound<T>(
  what: string,
  font: string,
  own: Design['fonts'],
  find: (bytes: Uint8Array) => Promise<T | null>,
  otherwise: T,
): T {
  const mine = own.find((f) => `own:${f.id}` === font);
  const key = `${what} ${mine?.data ?? font}`;
  const [found, setFound] = useState<{ key: string; value: T } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the font and for what is looked for
  useEffect(() => {
    let wanted = true;
    const finding = known.get(key) ?? bytesOf().then((bytes) => (bytes ? find(bytes) : null));
    known.set(key, finding);
    void finding.then((value) => {
      if (wanted && value !== null) setFound({ key, value: value as T });
    });
    return () => {
      wanted = false;
    };
  }, [key]);
  const bytesOf = async () => (mine ? bytesOfBase64(mine.data) : fontBytes(font));
  return found?.key === key ? found.value : otherwise;
}

/** Proportions of a font's own letters, and its features. */
export const useFontFacts = (font: string, own: Design['fonts']): FontFacts =>
  useFound(
    'facts',
    font,
    own,
    async (bytes) => {
      const look = await lookAtFont(bytes, font);
      return look?.ok ? look : null;
    },
    NO_FACTS,
  );

const NO_FORMS: readonly LetterForm[] = [];

/** The forms that a font has for a letter, its usual one first. */
export const useForms = (font: string, own: Design['fonts'], letter: string): readonly LetterForm[] =>
  useFound(`forms of ${letter}`, font, own, (bytes) => formsInFont(bytes, letter), NO_FORMS);
