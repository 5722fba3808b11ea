import type { EditorStore } from '../state/store.ts';

const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('showface');

type Message =
  | { readonly kind: 'written'; readonly id: string }
  | { readonly kind: 'hand-over'; readonly id: string };

let current: { readonly id: string; readonly store: EditorStore; release: () => void } | null = null;

/** Tells other tabs that a design was written. */
export function tellTabs(id: string): void {
  channel?.postMessage({ kind: 'written', id } satisfies Message);
}

/**
 * Claims a design for this tab. One tab writes it; another that opens it is told and may take it over, and
 * then the first one stops writing.
 */
export function claim(store: EditorStore, id: string): void {
  current?.release();
  current = null;
  if (!navigator.locks) {
    store.setState({ writes: true });
    return;
  }
  hold(store, id, { ifAvailable: true });
}

function hold(store: EditorStore, id: string, options: LockOptions): void {
  let release = () => {};
  const done = new Promise<void>((resolve) => {
    release = resolve;
  });
  const mine = { id, store, release };
  current = mine;
  void navigator.locks
    .request(`showface:${id}`, options, async (lock) => {
      if (current !== mine) return;
      store.setState({ writes: lock !== null });
      if (lock) await done;
    })
    .catch(() => {
      // The lock was taken over.
      if (current === mine) store.setState({ writes: false });
    });
}

/** Makes this tab the one that writes. */
export function takeOver(): void {
  if (!current) return;
  const { id, store } = current;
  channel?.postMessage({ kind: 'hand-over', id } satisfies Message);
  hold(store, id, { steal: true });
}

export function watchTabs(onWritten: (id: string) => void): void {
  channel?.addEventListener('message', (e: MessageEvent<Message>) => {
    if (!current || e.data.id !== current.id) return;
    if (e.data.kind === 'hand-over') {
      current.store.setState({ writes: false });
      current.release();
    } else if (!current.store.getState().writes) onWritten(e.data.id);
  });
}
