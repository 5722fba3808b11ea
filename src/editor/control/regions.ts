import { useEffect } from 'react';
import { useStore } from '../state/hooks.ts';
import type { EditorStore } from '../state/store.ts';

/** The regions of the bench, and of the first page, in the order they stand, each with where the focus goes in it. */
const REGIONS: readonly { readonly region: string; readonly first: string }[] = [
  { region: '.notice', first: 'button' },
  { region: '.title-block', first: 'button:not(:disabled)' },
  { region: '.rail', first: '[aria-current=step]' },
  { region: '.parts-side', first: '[role=treeitem][tabindex="0"], button' },
  { region: '.drawing', first: '.canvas' },
  { region: '.pane', first: '.pane-body[data-state=active]' },
  { region: '.first-kept', first: 'button' },
  { region: '.first-bed', first: 'select' },
  { region: '.first-cards', first: 'button' },
];

/** The measures of the part that is shown: the first one of them that can be changed. */
export const FIRST_MEASURE = '.inspector .measured input:not(:disabled)';

/** F6: the way around without tabbing through all of it. */
export function useGoRound(): void {
  const store = useStore();
  useEffect(() => {
    const onKey = (e: KeyboardEvent) => {
      if (e.key === 'F6' && !e.defaultPrevented && goRound(store, e.shiftKey)) e.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [store]);
}

/** To the next region that is there, or back; false where there is none. */
function goRound(store: EditorStore, back: boolean): boolean {
  const there = REGIONS.filter(({ region }) => document.querySelector(region));
  const now = there.findIndex(({ region }) => document.activeElement?.closest(region));
  const start = now < 0 && back ? 0 : now;
  const next = there.at((start + (back ? -1 : 1)) % there.length);
  if (!next) return false;
  if (next.region === '.pane') focusPane(store);
  else document.querySelector(next.region)?.querySelector<HTMLElement>(next.first)?.focus();
  return true;
}

/** Into the pane, which comes up where it was folded down: from there Tab reaches its first field. */
export function focusPane(store: EditorStore, at = '.pane-body[data-state=active]'): void {
  store.setState({ sheetOpen: true });
  focusSoon(at);
}

/** Into the name of what is selected, ready to be typed over. */
export function focusName(store: EditorStore): void {
  store.setState({ tab: 'part', sheetOpen: true });
  focusSoon('.inspector input');
}

/** Opens a menu of the bench by the keys that its button tells, where it is on the page. */
export function openMenu(keys: string): boolean {
  const button = document.querySelector<HTMLElement>(`.bench [aria-keyshortcuts~="${keys}"]`);
  button?.click();
  return button !== null;
}

/** What may be added to the face; the list of parts comes forward where it is not shown. */
export function openNewPart(store: EditorStore): void {
  if (openMenu('Insert')) return;
  store.setState({ tab: 'parts', sheetOpen: true });
  queueMicrotask(() => openMenu('Insert'));
}

/**
 * Gives the focus a place where the control that had it is gone, so that keys do not start again from the top of the
 * page; leaves it alone otherwise. Of several that ask for it at once the first one gets it. A component asks in a
 * layout effect: one that runs later finds the focus handed on to what came first on the page.
 */
export function regainFocus(selector = '.pane-body[data-state=active]'): void {
  focusSoon(selector, true);
}

/**
 * Gives the focus to something that what was just done brings about: when React has drawn it, before the next key.
 * A frame later keys that were typed on would be lost.
 */
export const focusSoon = (selector: string, onlyIfLost = false) =>
  queueMicrotask(() => {
    const now = document.activeElement;
    // What is hidden keeps the focus until the next frame is drawn.
    if (onlyIfLost && now !== document.body && now?.checkVisibility()) return;
    const found = document.querySelector<HTMLElement>(selector);
    found?.focus({ preventScroll: true });
    // What stands in a field is ready to be typed over.
    if (found instanceof HTMLInputElement) found.select();
  });
