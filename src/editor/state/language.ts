import { LANGUAGE_TAGS, type Language } from '../../plan/words/languages.ts';
import { speak } from '../words/t.ts';

const KEY = 'showface:language';

const known = (tag: string | null | undefined): Language | undefined =>
  LANGUAGE_TAGS.find((language) => language === tag?.toLowerCase().split('-')[0]);

/** The language chosen on this device, else the first of the browser's that there is, else English. */
function firstLanguage(): Language {
  let stored: string | null = null;
  try {
    stored = localStorage.getItem(KEY);
  } catch {
    // Storage may be blocked; the browser's languages are at hand all the same.
  }
  return known(stored) ?? navigator.languages.map(known).find((language) => language !== undefined) ?? 'en';
}

/** Speaks the device's language before anything is shown; English where its file cannot be had. */
export async function startSpeaking(): Promise<void> {
  await speak(firstLanguage()).catch(() => {});
}

/** Speaks a language from now on and keeps the choice. */
export async function chooseLanguage(language: Language): Promise<void> {
  await speak(language);
  try {
    localStorage.setItem(KEY, language);
  } catch {
    // Storage may be blocked; the choice then lasts as long as the page.
  }
}
