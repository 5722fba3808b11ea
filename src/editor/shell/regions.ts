import type { EditorStore } from '../state/store.ts';

/** The regions of the bench in the order they stand, each with where the focus goes in it. */
const REGIONS: readonly { readonly region: string; readonly first: string }[] = [
  { region: '.notice', first: 'button' },
  { region: '.title-block', first: 'button:not(:disabled)' },
  { region: '.rail', first: '[aria-current=step]' },
  { region: '.parts-side', first: '[role=treeitem][tabindex="0"], button' },
  { region: '.drawing', first: '.canvas' },
  { region: '.pane', first: '.pane-body[data-state=active]' },
];

/** The way around the bench without tabbing through all of it: to the next region that is there, or back. */
export function goRound(store: EditorStore, back: boolean): void {
  const there = REGIONS.filter(({ region }) => document.querySelector(region));
  const now = there.findIndex(({ region }) => document.activeElement?.closest(region));
  const start = now < 0 && back ? 0 : now;
  const next = there.at((start + (back ? -1 : 1)) % there.length);
  if (!next) return;
  if (next.region === '.pane') focusPane(store);
  else document.querySelector(next.region)?.querySelector<HTMLElement>(next.first)?.focus();
}

/** Into the pane, which comes up where it was folded down: from there Tab reaches its first field. */
export function focusPane(store: EditorStore): void {
  store.setState({ sheetOpen: true });
  focusSoon('.pane-body[data-state=active]');
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
