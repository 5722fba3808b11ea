import { useSyncExternalStore } from 'react';
import { en } from './en.ts';

export type WordKey = keyof typeof en;
export type Words = Readonly<Record<WordKey, string>>;
export type Values = Readonly<Record<string, string | number>>;

let words: Words = en;
const listeners = new Set<() => void>();

/** Takes another language's table; everything on screen follows. */
export function speak(table: Words, language: string): void {
  words = table;
  document.documentElement.lang = language;
  for (const listener of listeners) listener();
}

/** The words for a key, with `{name}` places filled. */
export function t(key: WordKey, values?: Values): string {
  const text = words[key];
  return values ? text.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole)) : text;
}

/** Re-renders a component when the language changes. */
export function useWords(): typeof t {
  useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => words,
  );
  return t;
}
