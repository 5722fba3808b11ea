import { type Opened, openDesign } from '../../design/open.ts';
import type { Design } from '../../design/schema.ts';
import { type Transaction, transact } from './database.ts';

/** One kept design in the list of them. */
export interface Kept {
  readonly id: string;
  readonly name: string;
  /** When it was last changed, milliseconds. */
  readonly at: number;
}

/** Thrown when another tab has taken a design over: nothing was written. */
export class TakenOver extends Error {
  override readonly name = 'TakenOver';
}

const LIST = 'list';
const LAST = 'last';
const designKey = (id: string) => `design:${id}`;
/** Names the tab that may write a design. Checked within each write, so that no late write of another gets in. */
const writerKey = (id: string) => `writer:${id}`;

const listIn = async (tx: Transaction): Promise<Kept[]> => (await tx.get<Kept[]>(LIST)) ?? [];

export const listKept = (): Promise<Kept[]> =>
  transact('readonly', async (tx) => (await listIn(tx)).sort((a, b) => b.at - a.at));

export const lastOpened = (): Promise<string | null> =>
  transact('readonly', async (tx) => (await tx.get<string>(LAST)) ?? null);

/** What is kept under an id, through the guarded door; null where nothing is. */
export async function readKept(id: string): Promise<Opened | null> {
  const text = await transact('readonly', (tx) => tx.get<string>(designKey(id)));
  return text === undefined ? null : openDesign(text);
}

export const forget = (id: string): Promise<void> =>
  transact('readwrite', async (tx) => {
    const list = await listIn(tx);
    tx.drop(designKey(id));
    tx.drop(writerKey(id));
    tx.put(
      LIST,
      list.filter((k) => k.id !== id),
    );
  });

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
    tx.put(designKey(id), JSON.stringify(design));
    tx.put(writerKey(id), writer);
    tx.put(LIST, [{ id, name: design.name, at }, ...list.filter((k) => k.id !== id)]);
    tx.put(LAST, id);
  });
