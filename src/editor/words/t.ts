import { useSyncExternalStore } from 'react';
import { ENGLISH_FILE, type FileWords } from '../../design/fileWords.ts';
import type { Language } from '../../plan/words/languages.ts';
import { en, type WordKey, type Words } from './en.ts';
import { pluralForm } from './plural.ts';

export type { WordKey };
export type Values = Readonly<Record<string, string | number>>;

interface Table {
  readonly words: Words;
  readonly file: FileWords;
  /** Names in starters, by their English ones. */
  readonly starterNames: Readonly<Record<string, string>>;
}

/** English as far as it has come: a part of the page that is loaded later brings its own. */
const english = { ...en } as unknown as { [K in WordKey]: string };
const ENGLISH: Table = { words: english, file: ENGLISH_FILE, starterNames: {} };

/** Adds English words, before what says them is drawn; the other languages are whole. */
export const bring = (words: Partial<Words>): void => void Object.assign(english, words);

/** What is said by language. English is there from the start; the others come when they are wanted. */
const TABLES: Readonly<Record<Language, () => Promise<Table>>> = {
  en: async () => ENGLISH,
  de: async () => {
    const { de, file, starterNames } = await import('./de.ts');
    return { words: de, file, starterNames };
  },
  es: async () => {
    const { es, file, starterNames } = await import('./es.ts');
    return { words: es, file, starterNames };
  },
};

let table = ENGLISH;
let language: Language = 'en';
let wanted: Language = 'en';
const listeners = new Set<() => void>();

/** Takes another language's table; everything on screen follows. Rejects when its file cannot be had. */
export async function speak(next: Language): Promise<void> {
  wanted = next;
  const found = await TABLES[next]();
  // Of two choices in a row the later one counts, whichever file comes first.
  if (wanted !== next) return;
  table = found;
  language = next;
  document.documentElement.lang = next;
  for (const listener of listeners) listener();
}

/** The language on screen. */
export const spoken = (): Language => language;

/** Calls back after the language has changed. */
export function onSpoken(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

/** A place to fill, `{name}`, or the word that goes with its count, `{name:page|pages}`. */
const PLACE = /\{(\w+)(?::([^}]*))?\}/g;

/** The words for a key, with places filled. */
export function t(key: WordKey, values?: Values): string {
  const text = table.words[key];
  if (!values) return text;
  return text.replace(PLACE, (whole, name: string, forms?: string) => {
    const value = values[name];
    if (value === undefined) return whole;
    return forms === undefined ? String(value) : pluralForm(language, Number(value), forms.split('|'));
  });
}

/** The first of some keys that there are words for: what is called as another thing is has none of its own. */
export const firstOf = (...keys: readonly string[]): WordKey =>
  (keys.find((key) => Object.hasOwn(english, key)) ?? keys[0]) as WordKey;

/** What is said of a file that does not open or was mended. */
export const fileWords = (): FileWords => table.file;

/** What a starter, and what is in it, is called; re-renders when the language changes. */
export const useStarterNames = (): Table['starterNames'] =>
  useSyncExternalStore(onSpoken, () => table.starterNames);

/** Re-renders a component when the language changes. */
export function useWords(): typeof t {
  useSyncExternalStore(onSpoken, spoken);
  return t;
}

/** The language on screen; re-renders when it changes. */
export const useLanguage = (): Language => useSyncExternalStore(onSpoken, spoken);
