import type { Opened } from '../../design/open.ts';
import type { Design } from '../../design/schema.ts';
import { openText } from '../shipped/door.ts';
import { fileWords } from '../words/t.ts';
import { type Transaction, transact } from './database.ts';

/** One kept design in the list of them. */
export interface Kept {
  readonly id: string;
  readonly name: string;
  /** When it was last changed, milliseconds; 0 where that was lost. */
  readonly at: number;
  /** When it was removed, milliseconds: it stays for a while, to be put back. */
  readonly removed?: number | undefined;
}

/** Thrown when another tab has taken a design over: nothing was written. */
export class TakenOver extends Error {
  override readonly name = 'TakenOver';
}

const LIST = 'list';
const LAST = 'last';
const DESIGN = 'design:';
const designKey = (id: string) => DESIGN + id;
/** Names the tab that may write a design. Checked within each write, so that no late write of another gets in. */
const writerKey = (id: string) => `writer:${id}`;

/** The photo under a design, as bytes, and how it lies. */
export const photoKeys = (id: string) => [`photo:${id}`, `photo-lie:${id}`] as const;

/** What a design was at a time, milliseconds; fifteen digits keep the order of the keys that of time. */
const earlierPrefix = (id: string) => `earlier:${id}:`;
const earlierKey = (id: string, at: number) => `${earlierPrefix(id)}${String(at).padStart(15, '0')}`;
/** A state is put by when the one put by before it is at least this much older. */
const EARLIER_EVERY_MS = 10 * 60 * 1000;
const MOST_EARLIER = 24;
const REMOVED_STAYS_MS = 30 * 24 * 3600 * 1000;

/**
 * The list, whatever state it is in: of its entries those that are sound and whose design is there, and after them
 * every design that it does not name.
 */
async function listIn(tx: Transaction): Promise<Kept[]> {
  const [stored, keys] = [await tx.get<unknown>(LIST), await tx.keys(DESIGN)];
  const unlisted = new Set(keys.map((key) => key.slice(DESIGN.length)));
  const listed = (Array.isArray(stored) ? stored : [])
    .filter(isKept)
    // Naming one takes it out of those that are not named; a second entry of the same design is left out.
    .filter(({ id }) => unlisted.delete(id));
  const found = [...unlisted].map(async (id) => ({ id, name: nameIn(await tx.get(designKey(id))), at: 0 }));
  return [...listed, ...(await Promise.all(found))];
}

function isKept(entry: unknown): entry is Kept {
  if (typeof entry !== 'object' || entry === null) return false;
  const { id, name, at, removed } = entry as Record<string, unknown>;
  const times = removed === undefined ? [at] : [at, removed];
  return typeof id === 'string' && typeof name === 'string' && times.every((time) => Number.isFinite(time));
}

/** The name within the text of a design; none where it cannot be read. */
function nameIn(text: unknown): string {
  try {
    const { name } = JSON.parse(String(text)) as { name?: unknown };
    return typeof name === 'string' ? name.slice(0, 200) : '';
  } catch {
    return '';
  }
}

const listWhere = (wanted: (kept: Kept) => boolean): Promise<Kept[]> =>
  transact('readonly', async (tx) => (await listIn(tx)).filter(wanted).sort((a, b) => b.at - a.at));

/** The kept designs, the latest first. */
export const listKept = (): Promise<Kept[]> => listWhere((k) => k.removed === undefined);

/** Those that were removed and can still be put back. */
export const listRemoved = (): Promise<Kept[]> => listWhere((k) => k.removed !== undefined);

/** The design to begin with again: the one last written, unless it was removed since. */
export const lastOpened = (): Promise<string | null> =>
  transact('readonly', async (tx) => {
    const last = await tx.get<string>(LAST);
    const entry = (await listIn(tx)).find((k) => k.id === last);
    return entry && entry.removed === undefined ? entry.id : null;
  });

/** What is kept under an id, through the guarded door; null where nothing is. */
export async function readKept(id: string): Promise<Opened | null> {
  const text = await transact('readonly', (tx) => tx.get<string>(designKey(id)));
  return text === undefined ? null : openText(String(text), fileWords());
}

/** Marks a design as removed at a time, or, without one, takes the mark off again. */
export const markRemoved = (id: string, at: number | undefined): Promise<void> =>
  transact('readwrite', async (tx) => {
    tx.put(
      LIST,
      (await listIn(tx)).map((k) => (k.id === id ? { ...k, removed: at } : k)),
    );
  });

/** Deletes designs for good, with all that was put by of them. */
export const forget = (ids: readonly string[]): Promise<void> =>
  transact('readwrite', async (tx) => {
    const list = await listIn(tx);
    for (const id of ids) {
      tx.drop(designKey(id));
      tx.drop(writerKey(id));
      for (const key of photoKeys(id)) tx.drop(key);
      for (const key of await tx.keys(earlierPrefix(id))) tx.drop(key);
    }
    tx.put(
      LIST,
      list.filter((k) => !ids.includes(k.id)),
    );
  });

/** Deletes for good what was removed more than thirty days before now, milliseconds. */
export async function clearRemoved(now: number): Promise<void> {
  const old = (await listRemoved()).filter((k) => now - (k.removed ?? now) > REMOVED_STAYS_MS);
  if (old.length > 0) await forget(old.map((k) => k.id));
}

export interface Writing {
  readonly id: string;
  readonly design: Design;
  readonly at: number;
  /** The tab that writes. */
  readonly writer: string;
  /** The tab has just been given the design: it becomes its writer. */
  readonly claims: boolean;
}

/** Writes a design, its place in the list and that it was last, all or nothing. */
export const writeKept = ({ id, design, at, writer, claims }: Writing): Promise<void> =>
  transact('readwrite', async (tx) => {
    const [list, holder] = [await listIn(tx), await tx.get<string>(writerKey(id))];
    if (!claims && holder !== writer) throw new TakenOver();
    const text = JSON.stringify(design);
    const since = list.find((k) => k.id === id)?.at;
    if (since !== undefined) await putBy(tx, id, since, text);
    tx.put(designKey(id), text);
    tx.put(writerKey(id), writer);
    tx.put(LIST, [{ id, name: design.name, at }, ...list.filter((k) => k.id !== id)]);
    tx.put(LAST, id);
  });

/** Puts by the state that is about to be overwritten, if the last one put by is old enough. */
async function putBy(tx: Transaction, id: string, since: number, next: string): Promise<void> {
  const before = await tx.get<string>(designKey(id));
  if (before === undefined || before === next) return;
  const keys = await tx.keys(earlierPrefix(id));
  const last = keys.at(-1);
  if (last !== undefined && since - timeOf(last) < EARLIER_EVERY_MS) return;
  tx.put(earlierKey(id, since), before);
  for (const key of keys.slice(0, Math.max(0, keys.length + 1 - MOST_EARLIER))) tx.drop(key);
}

const timeOf = (key: string): number => Number(key.slice(-15));

/** When the states of a design that were put by were last changed, the newest first. */
export const listEarlier = (id: string): Promise<number[]> =>
  transact('readonly', async (tx) => (await tx.keys(earlierPrefix(id))).map(timeOf).reverse());

export async function readEarlier(id: string, at: number): Promise<Opened | null> {
  const text = await transact('readonly', (tx) => tx.get<string>(earlierKey(id, at)));
  return text === undefined ? null : openText(text, fileWords());
}
