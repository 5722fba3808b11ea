import { useCallback, useSyncExternalStore } from 'react';
import { useEditor } from '../state/hooks.ts';

/** What was ticked off, by the name of the list and the design. */
const known = new Map<string, ReadonlySet<string>>();
const listeners = new Set<() => void>();

const keyOf = (what: string, design: string | null): string => `showface:${what}:${design ?? ''}`;

/**
 * Things ticked off at the bench: kept on this device beside the design, never in it. Every view of the same
 * list shows the same ticks, in other tabs too.
 */
export function useTicks(what: string) {
  const design = useEditor((s) => s.designId);
  const key = keyOf(what, design);
  const ticked = useSyncExternalStore(watch, () => ticksOf(key));
  const tick = useCallback(
    (ids: readonly string[], on: boolean) => {
      const next = new Set(ticksOf(key));
      for (const id of ids) {
        if (on) next.add(id);
        else next.delete(id);
      }
      known.set(key, next);
      tell();
      try {
        localStorage.setItem(key, JSON.stringify([...next]));
      } catch {
        // Storage may be blocked; the ticks then last as long as the page.
      }
    },
    [key],
  );
  return { ticked, tick };
}

function tell(): void {
  for (const listener of listeners) listener();
}

function watch(listener: () => void): () => void {
  if (listeners.size === 0) addEventListener('storage', onOtherTab);
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
    if (listeners.size === 0) removeEventListener('storage', onOtherTab);
  };
}

function onOtherTab(e: StorageEvent): void {
  if (e.key === null) known.clear();
  else known.delete(e.key);
  tell();
}

function ticksOf(key: string): ReadonlySet<string> {
  let ticks = known.get(key);
  if (!ticks) {
    ticks = read(key);
    known.set(key, ticks);
  }
  return ticks;
}

function read(key: string): ReadonlySet<string> {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(key) ?? '[]');
    return new Set(Array.isArray(value) ? value.filter((id) => typeof id === 'string') : []);
  } catch {
    return new Set();
  }
}
