import type { Design } from '../../design/schema.ts';
import { openInto } from '../state/commit.ts';
import type { EditorStore } from '../state/store.ts';
import { keepJournal, lastOpened, readKept } from './journal.ts';
import { claim, watchTabs } from './tabs.ts';

/** Puts a design on the bench as a kept one of its own. */
export function bringIn(store: EditorStore, design: Design): string {
  const id = crypto.randomUUID();
  claim(store, id);
  openInto(store, id, design);
  return id;
}

/** Opens a kept design; false when it is no longer there. */
export async function reopen(store: EditorStore, id: string): Promise<boolean> {
  const design = await readKept(id);
  if (!design) return false;
  claim(store, id);
  openInto(store, id, design);
  return true;
}

/** Brings back what was on the bench last, and keeps it from now on. */
export async function startSession(store: EditorStore): Promise<void> {
  keepJournal(store);
  watchTabs((id) => {
    void readKept(id).then((design) => {
      if (design && store.getState().designId === id) openInto(store, id, design);
    });
  });
  try {
    const id = await lastOpened();
    if (id) await reopen(store, id);
  } catch {
    store.setState({ saved: 'blocked' });
  }
}
