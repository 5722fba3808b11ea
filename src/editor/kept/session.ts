import { mergedJobs } from '../../design/job/record.ts';
import type { Job } from '../../design/job/schema.ts';
import { problemMessage } from '../../design/problem.ts';
import type { Design } from '../../design/schema.ts';
import { freshDocument } from '../document/document.ts';
import { commit, openInto } from '../state/commit.ts';
import type { EditorStore } from '../state/store.ts';
import { fileWords, spoken, t } from '../words/t.ts';
import { newId } from './id.ts';
import { keepJournal } from './journal.ts';
import { failedToOpen, openingBegun, openingDone } from './opening.ts';
import { lastOpened, readEarlier, readKept, writeKept } from './shelf.ts';
import { claim, THIS_TAB, watchTabs } from './tabs.ts';

/** Puts a design on the bench as a kept one of its own. */
export function bringIn(store: EditorStore, design: Design): string {
  const id = newId();
  put(store, id, design);
  return id;
}

function put(store: EditorStore, id: string, design: Design): void {
  claim(store, id);
  openInto(store, id, design);
}

/** Opens a kept design; false when it is no longer there or no longer opens, which is told and leaves it kept. */
export async function reopen(store: EditorStore, id: string): Promise<boolean> {
  const opened = await readKept(id);
  if (!opened) return false;
  if (!opened.ok) {
    const lines = opened.problems.map((p) => problemMessage(p, fileWords()));
    store.setState({ notice: { tone: 'bad', text: t('kept.refused'), lines } });
    return false;
  }
  put(store, id, opened.design);
  return true;
}

/**
 * Opens a design that came by a link under the id that it has on the other device. What is done here and there is put
 * together. What this device has under that id and is otherwise different is kept as a copy; true when there is one.
 */
export async function bringLinked(
  store: EditorStore,
  id: string,
  design: Design,
  copyName: string,
): Promise<boolean> {
  let copied = false;
  let job = design.job;
  try {
    const had = await readKept(id);
    if (had?.ok) job = mergedJobs(had.design.job, job);
    if (had?.ok && !sameButJob(had.design, design)) {
      const copy = { ...had.design, name: copyName.slice(0, 200) };
      await writeKept({ id: newId(), design: copy, at: Date.now(), writer: THIS_TAB, claims: true });
      copied = true;
    }
  } catch {
    // Nothing is kept here, so there is nothing to lose.
  }
  put(store, id, job ? { ...design, job } : design);
  return copied;
}

const sameButJob = ({ job: _, ...a }: Design, { job: __, ...b }: Design): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

/** Puts what is done elsewhere together with what is done here, as one step of undo; false where this device has no such design. */
export async function mergeLinked(store: EditorStore, id: string, job: Job, label: string): Promise<boolean> {
  if (store.getState().designId !== id && !(await reopen(store, id).catch(() => false))) return false;
  const value = mergedJobs(store.getState().edit.design.job, job);
  return commit(store, [{ kind: 'set', field: 'job', value }], label);
}

/** Opens a state that was put by as a design of its own; the one on the bench stays kept as it is. */
export async function bringEarlier(store: EditorStore, id: string, at: number): Promise<boolean> {
  const opened = await readEarlier(id, at).catch(() => null);
  if (!opened?.ok) return false;
  const name = t('earlier.name', { name: opened.design.name, time: new Date(at).toLocaleString(spoken()) });
  bringIn(store, { ...opened.design, name: name.slice(0, 200) });
  return true;
}

/** Shows what another tab wrote of the open design; what is selected and looked at stays. */
async function follow(store: EditorStore, id: string): Promise<void> {
  const opened = await readKept(id).catch(() => null);
  const { designId, writes, edit } = store.getState();
  if (!opened?.ok || designId !== id || writes) return;
  const { design } = opened;
  const selection = edit.selection.filter((part) => design.parts.some((p) => p.id === part));
  store.setState({ edit: { ...freshDocument(design), selection }, provisional: null });
}

/** Storage that has not answered by then is taken for blocked; the bench opens without it. */
const PATIENCE_MS = 2500;

/** Brings back what was on the bench last, and keeps it from now on. */
export async function startSession(store: EditorStore): Promise<void> {
  const journal = keepJournal(store);
  watchTabs({ follow: (id) => follow(store, id), onHandOver: journal.flush });
  const late = new Promise<never>((_, reject) => {
    setTimeout(() => reject(new Error('storage does not answer')), PATIENCE_MS);
  });
  try {
    await Promise.race([bringBack(store), late]);
  } catch {
    store.setState({ saved: 'blocked' });
  }
}

async function bringBack(store: EditorStore): Promise<void> {
  const id = await lastOpened();
  if (!id || store.getState().designId !== null) return;
  if (failedToOpen(id)) {
    store.setState({ notice: { tone: 'warn', text: t('kept.failedLast') } });
    return;
  }
  openingBegun(id);
  if (!(await reopen(store, id))) openingDone(id);
}
