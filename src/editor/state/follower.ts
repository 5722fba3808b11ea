import type { Shown } from '../document/shown.ts';
import { type EditorState, type EditorStore, isCarrying, shownNow } from './store.ts';

/** While something is dragged, fields follow it this often: laying a page out takes longer than a frame. */
const FOLLOW_MS = 100;
/** Following takes no larger part of the time than this: where it takes long, fields follow less often. */
const MOST_SHARE = 1 / 10;

type Subscribe = (listener: () => void) => () => void;

export interface Follower {
  readonly get: () => Shown;
  readonly subscribe: Subscribe;
  /** Tells of all that changes but the steps of a drag, from one place of what is carried to the next. */
  readonly besides: Subscribe;
}

/** Tells of the design as shown: at once, or during a drag every so often, and everybody together. */
export function createFollower(store: EditorStore): Follower {
  const listeners = new Set<() => void>();
  const besides = new Set<() => void>();
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
  store.subscribe((state, before) => {
    if (!isCarrying(state)) take();
    else timer ??= setTimeout(take, Math.max(FOLLOW_MS, took / MOST_SHARE));
    if (isStep(state, before)) return;
    for (const listener of besides) listener();
  });
  return {
    get: () => shown,
    subscribe: addingTo(listeners),
    besides: addingTo(besides),
  };
}

const addingTo =
  (listeners: Set<() => void>): Subscribe =>
  (listener) => {
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
    };
  };

/** Nothing changed but where a hand has what it carries; a measure that is typed for it is something else. */
function isStep(now: EditorState, before: EditorState): boolean {
  if (!isCarrying(now) || !isCarrying(before) || now.hud?.typed || before.hud?.typed) return false;
  for (const key in now) {
    const k = key as keyof EditorState;
    if (k !== 'provisional' && k !== 'hud' && now[k] !== before[k]) return false;
  }
  return true;
}
