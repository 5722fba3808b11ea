import type { Design } from '../../design/schema.ts';
import { type LengthUnit, type MeasureStyle, type Notation, PLAIN_NOTATION } from '../../measure/style.ts';

/** Languages that a plan can be told in, by their tags (BCP 47). */
export type Language = 'en' | 'de' | 'es';

interface LanguageEntry {
  /** In the language itself. */
  readonly name: string;
  readonly notation: Notation;
  /** What people who speak it mostly measure, print and pay in; new designs begin so. */
  readonly usual: {
    readonly unit: LengthUnit;
    readonly paper: string;
    readonly containers: Design['paint']['containers'];
    readonly currency: string;
  };
}

export const LANGUAGES: Readonly<Record<Language, LanguageEntry>> = {
  en: {
    name: 'English',
    notation: PLAIN_NOTATION,
    usual: { unit: 'in', paper: 'letter', containers: 'us', currency: '$' },
  },
  de: {
    name: 'Deutsch',
    notation: { decimalMark: ',', currency: 'behind', heavy: 'reichlich', light: 'knapp' },
    usual: { unit: 'mm', paper: 'a4', containers: 'metric', currency: '€' },
  },
  es: {
    name: 'Español',
    notation: { decimalMark: ',', currency: 'behind', heavy: 'largo', light: 'escaso' },
    usual: { unit: 'mm', paper: 'a4', containers: 'metric', currency: '€' },
  },
};

/** A design's measures as the language writes them. */
export const styleIn = (
  language: Language,
  measure: Design['measure'],
): MeasureStyle & Design['measure'] => ({
  ...measure,
  notation: LANGUAGES[language].notation,
});

export const LANGUAGE_TAGS = Object.keys(LANGUAGES) as Language[];
