import type { Tables } from '../../materials/types.ts';
import { names as german } from './de/names.ts';
import { names as spanish } from './es/names.ts';
import { LANGUAGES, type Language } from './languages.ts';

const PHRASES: Readonly<Record<Language, readonly (readonly [english: string, own: string])[]>> = {
  en: [],
  de: german,
  es: spanish,
};

/** Lists whose names are words; beds and fonts go by the names of their trade. */
const NAMED = ['materials', 'stocks', 'brads', 'screws', 'containers', 'glues', 'tapes', 'papers'] as const;

/** A table's name in a language: its words exchanged, its decimals in the language's notation. */
export function nameIn(language: Language, name: string): string {
  const worded = PHRASES[language].reduce((text, [english, own]) => text.replace(english, own), name);
  return worded.replace(/(\d)\.(\d)/g, `$1${LANGUAGES[language].notation.decimalMark}$2`);
}

/** The tables that come with the tool, their entries named in a language; everything else is as it was. */
export function tablesIn(language: Language, tables: Tables): Tables {
  if (PHRASES[language].length === 0) return tables;
  const named = NAMED.map((list) => [
    list,
    tables[list].map((entry) => ({ ...entry, name: nameIn(language, entry.name) })),
  ]);
  return { ...tables, ...(Object.fromEntries(named) as Partial<Tables>) };
}
