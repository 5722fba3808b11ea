import { isOwnAssembly, type OwnAssembly, openOwn, saveOwn } from '../../design/assembly/own.ts';
import { readText } from '../../design/open.ts';
import { problemMessage } from '../../design/problem.ts';
import { type EditorStore, say } from '../state/store.ts';
import { ownTool } from '../state/tools.ts';
import { fileWords, t } from '../words/t.ts';
import '../words/deskWords.ts';
import { transact } from './database.ts';
import { newId } from './id.ts';

const OWN = 'own:';

/** Brings the assemblies of the person's own that this device keeps; what does not open stays where it is. */
export async function loadOwned(store: EditorStore): Promise<void> {
  const kept = await transact('readonly', async (tx) =>
    Promise.all((await tx.keys(OWN)).map(async (key) => [key, await tx.get<unknown>(key)] as const)),
  ).catch(() => []);
  const found = kept.flatMap(([key, text]): [string, OwnAssembly][] => {
    const read = readText(String(text), fileWords());
    const opening = read.ok && isOwnAssembly(read.data) ? openOwn(read.data) : null;
    return opening?.ok ? [[key.slice(OWN.length), opening.opened]] : [];
  });
  // What could not be written to the device is here for as long as the page.
  store.setState(({ owned }) => ({ owned: new Map([...owned, ...found]) }));
}

/** Keeps one on this device, under an id of its own if it has none yet; gives the id. */
export async function putOwn(store: EditorStore, own: OwnAssembly, id = newId()): Promise<string> {
  store.setState(({ owned }) => ({ owned: new Map([...owned, [id, own]]) }));
  try {
    await transact('readwrite', async (tx) => tx.put(OWN + id, saveOwn(own)));
  } catch {
    store.setState({ notice: { tone: 'warn', text: t('own.notKept', { name: own.name }) } });
  }
  return id;
}

/** Deletes one from this device; it can be put back while that is offered. */
export async function dropOwn(store: EditorStore, id: string): Promise<void> {
  const { owned, tool } = store.getState();
  const own = owned.get(id);
  if (!own) return;
  const text = t('own.dropped', { name: own.name });
  store.setState({
    owned: new Map([...owned].filter(([one]) => one !== id)),
    tool: tool === ownTool(id) ? 'select' : tool,
    notice: {
      tone: 'warn',
      text,
      offer: { label: t('own.putBack'), take: () => void putOwn(store, own, id) },
    },
  });
  say(store, text);
  await transact('readwrite', async (tx) => tx.drop(OWN + id)).catch(() => undefined);
}

/**
 * Takes one out of the text of a file onto the shelf. Gives every problem of a bad one, which changes nothing; null where
 * it is a file of something else.
 */
export async function bringOwn(store: EditorStore, text: string): Promise<readonly string[] | null> {
  const read = readText(text, fileWords());
  if (!read.ok || !isOwnAssembly(read.data)) return null;
  const opening = openOwn(read.data, fileWords());
  if (!opening.ok) return opening.problems.map((p) => problemMessage(p, fileWords()));
  await putOwn(store, opening.opened);
  say(store, t('own.kept', { name: opening.opened.name }));
  return [];
}
