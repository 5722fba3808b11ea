import { type EditorStore, THEMES, type Theme, type ThemeChoice } from './store.ts';

const DARK = '(prefers-color-scheme: dark)';
const CONTRAST = '(prefers-contrast: more)';
const KEY = 'showface:theme';

function resolveTheme(choice: ThemeChoice): Theme {
  if (choice !== 'auto') return choice;
  const dark = matchMedia(DARK).matches;
  if (matchMedia(CONTRAST).matches) return dark ? 'contrast-dark' : 'contrast';
  return dark ? 'dark' : 'light';
}

let queries: readonly MediaQueryList[] | null = null;

/**
 * Calls back when the device changes its mind about light, dark or contrast: in the order of these calls, since all listen
 * to the same queries.
 */
export function watchTheme(listener: () => void): () => void {
  queries ??= [matchMedia(DARK), matchMedia(CONTRAST)];
  const all = queries;
  for (const q of all) q.addEventListener('change', listener);
  return () => {
    for (const q of all) q.removeEventListener('change', listener);
  };
}

/**
 * The theme that the root element has. The device's queries answer with another one before they tell of it: what asks them
 * in between would draw by the colors of before, and not again.
 */
export const themeOnPage = (): Theme => document.documentElement.dataset.theme as Theme;

export function storedTheme(): ThemeChoice {
  try {
    const stored = localStorage.getItem(KEY);
    return THEMES.find((theme) => theme === stored) ?? 'auto';
  } catch {
    return 'auto';
  }
}

/** Puts the theme on the root element, before anything is drawn with it, and keeps the choice. */
export function keepTheme(store: EditorStore): void {
  const apply = () => {
    document.documentElement.dataset.theme = resolveTheme(store.getState().theme);
  };
  apply();
  watchTheme(apply);
  store.subscribe((now, before) => {
    if (now.theme === before.theme) return;
    apply();
    try {
      localStorage.setItem(KEY, now.theme);
    } catch {
      // Storage may be blocked; the choice then lasts as long as the page.
    }
  });
}
