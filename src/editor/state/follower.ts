import type { Design } from '../../design/schema.ts';
import { type EditorStore, isCarrying, shownDesign } from './store.ts';

/** While something is dragged, fields follow it this often: laying a page out takes longer than a frame. */
const FOLLOW_MS = 100;

interface Follower {
  readonly get: () => Design;
  readonly subscribe: (listener: () => void) => () => void;
}

const followers = new WeakMap<EditorStore, Follower>();

/** Tells of the design as shown: at once, or during a drag every so often, and everybody together. */
export function followerOf(store: EditorStore): Follower {
  let follower = followers.get(store);
  if (!follower) {
    follower = createFollower(store);
    followers.set(store, follower);
  }
  return follower;
}

function createFollower(store: EditorStore): Follower {
  const listeners = new Set<() => void>();
  let shown = shownDesign(store.getState());
  let timer: ReturnType<typeof setTimeout> | undefined;
  const take = () => {
    clearTimeout(timer);
    timer = undefined;
    const now = shownDesign(store.getState());
    if (now === shown) return;
    shown = now;
    for (const listener of listeners) listener();
  };
  store.subscribe((state) => {
    if (!isCarrying(state)) take();
    else timer ??= setTimeout(take, FOLLOW_MS);
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
