import type { Shown } from '../document/shown.ts';
import { type EditorStore, isCarrying, shownNow } from './store.ts';

/** While something is dragged, fields follow it this often: laying a page out takes longer than a frame. */
const FOLLOW_MS = 100;
/** Following takes no larger part of the time than this: where it takes long, fields follow less often. */
const MOST_SHARE = 1 / 10;

export interface Follower {
  readonly get: () => Shown;
  readonly subscribe: (listener: () => void) => () => void;
}

/** Tells of the design as shown: at once, or during a drag every so often, and everybody together. */
export function createFollower(store: EditorStore): Follower {
  const listeners = new Set<() => void>();
  let shown = shownNow(store.getState());
  let timer: ReturnType<typeof setTimeout> | undefined;
  let took = 0;
  const take = () => {
    clearTimeout(timer);
    timer = undefined;
    const now = shownNow(store.getState());
    if (now === shown) return;
    shown = now;
    const begun = performance.now();
    for (const listener of listeners) listener();
    // What was told is rendered in a microtask of its own, before this one.
    queueMicrotask(() => {
      took = performance.now() - begun;
    });
  };
  store.subscribe((state) => {
    if (!isCarrying(state)) take();
    else timer ??= setTimeout(take, Math.max(FOLLOW_MS, took / MOST_SHARE));
  });
  return {
    get: () => shown,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
