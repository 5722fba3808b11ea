import { type FocusEvent, type KeyboardEvent, type RefObject, useLayoutEffect } from 'react';

/** Which arrows walk a list. */
export type Along = 'across' | 'down' | 'both';

const ARROWS: Readonly<Record<string, { readonly along: Along; readonly by: 1 | -1 }>> = {
  ArrowRight: { along: 'across', by: 1 },
  ArrowLeft: { along: 'across', by: -1 },
  ArrowDown: { along: 'down', by: 1 },
  ArrowUp: { along: 'down', by: -1 },
};

/** Which of `count` things a key leads to from the one at `now` (-1: none yet), around the ends; null for other keys. */
export function placeByKey(key: string, count: number, now: number, along: Along): number | null {
  if (count === 0) return null;
  if (key === 'Home') return 0;
  if (key === 'End') return count - 1;
  const arrow = ARROWS[key];
  if (!arrow || (along !== 'both' && arrow.along !== along)) return null;
  if (now < 0) return arrow.by > 0 ? 0 : count - 1;
  return (now + arrow.by + count) % count;
}

/** The controls of a list that keys reach, as they stand: they bear `data-stop`. */
export const stopsOf = (list: Element): HTMLElement[] => [
  ...list.querySelectorAll<HTMLElement>('[data-stop]:not(:disabled, [aria-disabled=true])'),
];

/**
 * Gives the focus to the control that a key leads to, within the event of the key: a key typed right after it finds
 * the focus there, however late the page comes to it. True when the key was one of the list's.
 */
export function rove(e: KeyboardEvent, list: Element, along: Along): boolean {
  if (e.altKey || e.ctrlKey || e.metaKey) return false;
  const stops = stopsOf(list);
  const now = stops.findIndex((stop) => stop === document.activeElement);
  const next = placeByKey(e.key, stops.length, now, along);
  if (next === null) return false;
  e.preventDefault();
  stops[next]?.focus();
  return true;
}

const CHOSEN = '[aria-checked=true], [aria-selected=true]';

/** A list that is one stop of the Tab key, at what is chosen or was last in focus, and is walked by arrows. */
export function useRoving(list: RefObject<HTMLElement | null>, along: Along) {
  const stopAt = (wanted: (stop: HTMLElement) => boolean) => {
    const stops = list.current ? stopsOf(list.current) : [];
    const found = stops.find(wanted);
    if (!found) return false;
    for (const stop of stops) stop.tabIndex = stop === found ? 0 : -1;
    return true;
  };
  useLayoutEffect(() => {
    if (list.current?.contains(document.activeElement) && stopAt((stop) => stop === document.activeElement))
      return;
    stopAt((stop) => stop.matches(CHOSEN)) ||
      stopAt((stop) => stop.getAttribute('tabindex') === '0') ||
      stopAt(() => true);
  });
  return {
    onKeyDown: (e: KeyboardEvent) => {
      if (list.current) rove(e, list.current, along);
    },
    onFocus: (e: FocusEvent) => {
      stopAt((stop) => stop === e.target);
    },
  };
}
