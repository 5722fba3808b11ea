import { newDesign, usualBed } from '../../design/defaults.ts';
import type { Design } from '../../design/schema.ts';
import { LANGUAGE_TAGS, LANGUAGES, type Language } from '../../plan/words/languages.ts';
import { freshDocument } from '../document/document.ts';
import { speak, spoken, t } from '../words/t.ts';
import type { EditorStore } from './store.ts';

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

/** Speaks a language from now on and keeps the choice. An empty bench begins anew as its speakers measure. */
export async function chooseLanguage(store: EditorStore, language: Language): Promise<void> {
  await speak(language);
  if (store.getState().designId === null) store.setState({ edit: freshDocument(emptyDesign()) });
  try {
    localStorage.setItem(KEY, language);
  } catch {
    // Storage may be blocked; the choice then lasts as long as the page.
  }
}

/** A design as people who speak the language on screen measure, print and buy paint. */
export function asUsual(design: Design): Design {
  const { unit, paper, containers, currency } = LANGUAGES[spoken()].usual;
  const same = design.paint.containers === containers;
  return {
    ...design,
    measure: { ...design.measure, unit, currency },
    pages: { ...design.pages, paper },
    paint: { ...design.paint, containers },
    // Cans of the other system are not to be had: every size of this one counts.
    finishes: same ? design.finishes : design.finishes.map((finish) => ({ ...finish, containers: [] })),
  };
}

/** Nothing on the face yet, in the language on screen, around the bed of who measures so. */
export function emptyDesign(measure?: Design['measure']): Design {
  const usual = asUsual(newDesign(undefined, t('new.face')));
  const measured = measure ?? usual.measure;
  const design = { ...usual, measure: measured, bed: usualBed(measured.unit) };
  const names: Readonly<Record<string, string>> = { ground: t('new.ground'), trim: t('new.trim') };
  return { ...design, finishes: design.finishes.map((f) => ({ ...f, name: names[f.id] ?? f.name })) };
}
