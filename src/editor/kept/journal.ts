import type { Design } from '../../design/schema.ts';
import type { EditorStore } from '../state/store.ts';
import { TakenOver, writeKept } from './shelf.ts';
import { claimKnown, claimWritten, THIS_TAB, tellTabs, unclaimed } from './tabs.ts';

/** A change waits this long for others before it is written: well within a second, disk included. */
const WITHIN_MS = 150;
/** A device that could not write is asked again after this long. */
const AGAIN_MS = 4000;

export interface Journal {
  /** Writes what is not written yet; settles when it is, or cannot be. */
  readonly flush: () => Promise<void>;
}

/**
 * Writes every change a moment after it was made, one at a time and always the newest. Where the device keeps
 * nothing (blocked, private window, full disk), the person is told and the work goes on in memory; it is tried
 * again until it works.
 */
export function keepJournal(store: EditorStore): Journal {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running: Promise<void> | null = null;
  let written: { readonly id: string; readonly design: Design } | null = null;

  /** What is to be written, if anything is. */
  const due = () => {
    const { designId: id, edit, writes } = store.getState();
    if (!id || !writes) return null;
    return written?.id === id && written.design === edit.design ? null : { id, design: edit.design };
  };

  const writeAll = async () => {
    await claimKnown();
    for (let next = due(); next; next = due()) {
      const { id, design } = next;
      const claims = unclaimed(id);
      await writeKept({ id, design, at: Date.now(), writer: THIS_TAB, claims });
      written = next;
      if (claims) claimWritten(id);
      tellTabs(id);
    }
    if (store.getState().writes) store.setState({ saved: 'saved' });
    void askToStay();
  };

  const flush = (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    running ??= writeAll()
      .catch((error: unknown) => {
        if (error instanceof TakenOver) {
          store.setState({ writes: false });
          return;
        }
        const full = error instanceof DOMException && error.name === 'QuotaExceededError';
        store.setState({ saved: full ? 'full' : 'blocked' });
        timer ??= setTimeout(() => void flush(), AGAIN_MS);
      })
      .finally(() => {
        running = null;
      });
    return running;
  };

  store.subscribe((now, before) => {
    if (
      now.edit.design === before.edit.design &&
      now.designId === before.designId &&
      now.writes === before.writes
    )
      return;
    if (!due()) return;
    if (now.saved === 'saved') store.setState({ saved: 'saving' });
    if (running) return; // It takes the newest when it comes round.
    timer ??= setTimeout(() => void flush(), WITHIN_MS);
  });
  // A tab that is hidden or left may never come back.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void flush();
  });
  addEventListener('pagehide', () => void flush());
  return { flush };
}

let asked = false;

/** Asks the browser, once something is kept, not to clear it by itself when space runs short. */
async function askToStay(): Promise<void> {
  if (asked) return;
  asked = true;
  try {
    await navigator.storage?.persist?.();
  } catch {
    // Not offered here: what is kept then stays as long as the browser has room.
  }
}
