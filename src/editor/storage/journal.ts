import { createStore, del, get, set, type UseStore } from 'idb-keyval';
import { openDesign, saveDesign } from '../../design/open.ts';
import type { Design } from '../../design/schema.ts';
import type { EditorStore } from '../state/store.ts';
import { tellTabs } from './tabs.ts';

/** One kept design in the list of them. */
export interface Kept {
  readonly id: string;
  readonly name: string;
  /** When it was last changed, milliseconds. */
  readonly at: number;
}

/** Edits are on disk this long after they were made, at the latest. */
const WITHIN_MS = 400;

let database: UseStore | null = null;
const keep = (): UseStore => {
  database ??= createStore('showface', 'designs');
  return database;
};

const LIST = 'list';
const LAST = 'last';
const keyOf = (id: string) => `design:${id}`;

export async function listKept(): Promise<Kept[]> {
  const list = (await get<Kept[]>(LIST, keep())) ?? [];
  return [...list].sort((a, b) => b.at - a.at);
}

export const lastOpened = async (): Promise<string | null> => (await get<string>(LAST, keep())) ?? null;

export async function readKept(id: string): Promise<Design | null> {
  const text = await get<string>(keyOf(id), keep());
  if (!text) return null;
  const opened = openDesign(text);
  return opened.ok ? opened.design : null;
}

export async function forget(id: string): Promise<void> {
  await del(keyOf(id), keep());
  await set(
    LIST,
    (await listKept()).filter((k) => k.id !== id),
    keep(),
  );
}

async function write(id: string, design: Design): Promise<void> {
  await set(keyOf(id), saveDesign(design), keep());
  const others = (await listKept()).filter((k) => k.id !== id);
  await set(LIST, [{ id, name: design.name, at: Date.now() }, ...others], keep());
  await set(LAST, id, keep());
}

/**
 * Writes every change within half a second, oldest first and one at a time. Where the device keeps nothing
 * (private windows, full disk), the person is told and the work goes on in memory.
 */
export function keepJournal(store: EditorStore): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();
  let written: Design | null = null;

  const flush = () => {
    clearTimeout(timer);
    timer = undefined;
    const { designId, edit, writes } = store.getState();
    if (!designId || !writes || edit.design === written) return;
    const { design } = edit;
    written = design;
    writing = writing
      .then(() => write(designId, design))
      .then(() => {
        if (store.getState().edit.design === design) store.setState({ saved: 'saved' });
        tellTabs(designId);
      })
      .catch(() => {
        written = null;
        store.setState({ saved: 'blocked' });
      });
  };

  store.subscribe((now, before) => {
    if (now.designId === null || !now.writes) return;
    if (now.edit.design === before.edit.design && now.designId === before.designId) return;
    if (now.saved === 'saved') store.setState({ saved: 'saving' });
    timer ??= setTimeout(flush, WITHIN_MS);
  });
  // A tab that is hidden may never come back.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') flush();
  });
}
