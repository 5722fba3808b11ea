import type { EditorStore } from '../state/store.ts';
import { newId } from './id.ts';

/** Names this tab among those of the same browser. */
export const THIS_TAB = newId();

/** How long a tab may take to write its last edit before another takes the design over anyway. */
const HAND_OVER_MS = 500;
/** A browser that does not say by then whether another tab has the design is not waited for. */
const CLAIM_MS = 600;

type Message = { readonly kind: 'written' | 'hand-over' | 'handed' | 'who' | 'mine'; readonly id: string };

/** Absent where storage is blocked. */
const channel = (() => {
  try {
    return new BroadcastChannel('showface');
  } catch {
    return null;
  }
})();

const send = (kind: Message['kind'], id: string): void =>
  channel?.postMessage({ kind, id } satisfies Message);

interface Claim {
  readonly id: string;
  readonly store: EditorStore;
  release: () => void;
  /** The next write makes this tab the writer; those after it are refused once another tab is. */
  unclaimed: boolean;
  /** Settles when it is known whether this tab is the one that writes. */
  known: Promise<void>;
}

let current: Claim | null = null;
let events: TabEvents | null = null;

/** Settles when it is known whether this tab writes the open design. */
export const claimKnown = (): Promise<void> => current?.known ?? Promise.resolve();

export const unclaimed = (id: string): boolean => current?.id === id && current.unclaimed;

export function claimWritten(id: string): void {
  if (current?.id === id) current.unclaimed = false;
}

/** Tells other tabs that a design was written. */
export const tellTabs = (id: string): void => send('written', id);

/**
 * Claims a design for this tab. One tab writes it; another that opens it is told and may take it over, and
 * then the first one stops writing. When the first one is closed, the other becomes the writer.
 */
export function claim(store: EditorStore, id: string): void {
  current?.release();
  const mine: Claim = { id, store, release: () => {}, unclaimed: true, known: Promise.resolve() };
  current = mine;
  store.setState({ writes: true });
  mine.known = new Promise((resolve) => {
    setTimeout(resolve, CLAIM_MS);
    if (navigator.locks) void hold(mine, { ifAvailable: true }, resolve);
    else send('who', id);
  });
}

/** Holds the lock of a design as long as this tab has it open. */
async function hold(mine: Claim, options: LockOptions, onKnown: () => void = () => {}): Promise<void> {
  const inLine = !options.ifAvailable && !options.steal;
  const released = new Promise<void>((resolve) => {
    mine.release = resolve;
  });
  try {
    const got = await navigator.locks.request(`showface:${mine.id}`, options, async (lock) => {
      if (current !== mine) return true;
      // The tab that had it wrote on until it was closed.
      if (lock && inLine) await events?.follow(mine.id);
      if (current !== mine) return true;
      mine.unclaimed = lock !== null;
      mine.store.setState({ writes: lock !== null });
      onKnown();
      if (!lock) return false;
      await released;
      return true;
    });
    if (got) return;
    // In line behind the tab that has it.
    if (current === mine) await hold(mine, {});
  } catch (error) {
    if (current !== mine) return;
    // Stolen by another tab; any other failure means that locks are blocked here, and writes check for themselves.
    const stolen = error instanceof DOMException && error.name === 'AbortError';
    onKnown();
    if (!stolen) return;
    mine.store.setState({ writes: false });
    void hold(mine, {});
  }
}

/** Makes this tab the one that writes, once the other has written its last edit. */
export async function takeOver(): Promise<void> {
  const mine = current;
  if (!mine) return;
  await new Promise<void>((resolve) => {
    const timer = setTimeout(resolve, HAND_OVER_MS);
    channel?.addEventListener('message', function once(e: MessageEvent<Message>) {
      if (e.data.kind !== 'handed' || e.data.id !== mine.id) return;
      channel.removeEventListener('message', once);
      clearTimeout(timer);
      resolve();
    });
    send('hand-over', mine.id);
  });
  await events?.follow(mine.id);
  if (current !== mine) return;
  mine.release();
  // A claim of its own: the one in line for the lock ends with the old one.
  const taken: Claim = { ...mine, release: () => {}, unclaimed: true, known: Promise.resolve() };
  current = taken;
  mine.store.setState({ writes: true });
  if (navigator.locks) void hold(taken, { steal: true });
}

export interface TabEvents {
  /** Takes in what another tab wrote of the design that is open here. */
  readonly follow: (id: string) => Promise<void>;
  /** Another tab wants the design: settles when the last edit is written. */
  readonly onHandOver: () => Promise<void>;
}

export function watchTabs(given: TabEvents): void {
  events = given;
  channel?.addEventListener('message', (e: MessageEvent<Message>) => {
    const { kind, id } = e.data;
    const mine = current;
    if (mine?.id !== id) return;
    const { writes } = mine.store.getState();
    if (kind === 'written' && !writes) void given.follow(id);
    if (kind === 'who' && writes) send('mine', id);
    if (kind === 'mine' && !navigator.locks) mine.store.setState({ writes: false });
    if (kind === 'hand-over' && writes) {
      void given.onHandOver().then(() => {
        mine.store.setState({ writes: false });
        send('handed', id);
      });
    }
  });
}
