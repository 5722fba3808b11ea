import { MOST_CHARACTERS } from '../../design/limits.ts';
import { problemMessage } from '../../design/problem.ts';
import { saveDesign } from '../../design/save.ts';
import { openText } from '../shipped/door.ts';
import { type EditorStore, say } from '../state/store.ts';
import { fileWords, t } from '../words/t.ts';
import { bringIn } from './session.ts';

interface FileHandle {
  readonly name: string;
  getFile(): Promise<File>;
  createWritable(): Promise<{ write(data: Blob): Promise<void>; close(): Promise<void> }>;
}

interface FilePickers {
  showOpenFilePicker?(options: object): Promise<FileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileHandle>;
}

const pickers = (): FilePickers => window as unknown as FilePickers;
const JSON_FILES = { 'application/json': ['.json'] };
const TYPES = [{ description: 'Showface', accept: JSON_FILES }];
const OPENED = [{ description: 'Showface', accept: { ...JSON_FILES, 'application/zip': ['.zip'] } }];

/** What ZIP files begin with. */
const ZIP = [0x50, 0x4b, 3, 4] as const;

/** Files that designs came from, by design id, so that saving goes back to them. */
const handles = new Map<string, FileHandle>();

export async function openFile(store: EditorStore): Promise<void> {
  const pick = pickers().showOpenFilePicker;
  if (!pick) {
    const file = await pickByInput('.json,.zip,application/json,application/zip');
    if (file) await openFrom(store, file);
    return;
  }
  const picked = await pick.call(window, { types: OPENED }).catch(() => []);
  const [handle] = picked;
  if (!handle) return;
  const id = await openFrom(store, await handle.getFile());
  // A file of everything stays what it is.
  if (id && !handle.name.endsWith('.zip')) handles.set(id, handle);
}

/**
 * Opens a dropped or picked file; a bad one changes nothing and is told with every problem. Gives the design's id; none
 * for a building part of the person's own, which goes onto the shelf.
 */
export async function openFrom(store: EditorStore, file: File): Promise<string | null> {
  const refuse = (lines: readonly string[]): null => {
    store.setState({ notice: { tone: 'bad', text: t('file.refused', { name: file.name }), lines } });
    return null;
  };
  // No character takes more than four bytes: a larger file is not even read.
  if (file.size > MOST_CHARACTERS * 4) return refuse([t('file.tooLarge')]);
  const text = await textIn(file).catch(() => null);
  if (text === null) return refuse([t('file.unreadable')]);
  if (text.includes('"showfaceAssembly"')) {
    const { bringOwn } = await import('./own.ts');
    const problems = await bringOwn(store, text);
    if (problems) return problems.length > 0 ? refuse(problems) : null;
  }
  const opened = await openText(text, fileWords());
  if (!opened.ok) return refuse(opened.problems.map((p) => problemMessage(p, fileWords())));
  const id = bringIn(store, opened.design);
  store.setState({
    notice:
      opened.repairs.length > 0
        ? { tone: 'warn', text: t('file.mended', { name: file.name }), lines: opened.repairs }
        : null,
  });
  say(store, t('say.opened', { name: opened.design.name }));
  return id;
}

/** The text of a file; of one in which everything was exported, that of its design. */
async function textIn(file: File): Promise<string | null> {
  const start = new Uint8Array(await file.slice(0, ZIP.length).arrayBuffer());
  if (!ZIP.every((byte, i) => start[i] === byte)) return file.text();
  const { designIn } = await import('./packed.ts');
  return designIn(new Uint8Array(await file.arrayBuffer()));
}

export async function saveFile(store: EditorStore): Promise<void> {
  const { designId, edit } = store.getState();
  if (!designId) return;
  const blob = new Blob([saveDesign(edit.design)], { type: 'application/json' });
  const name = `${fileName(edit.design.name)}.json`;
  const pick = pickers().showSaveFilePicker;
  if (!pick) {
    download(name, blob);
    say(store, t('say.saved', { name }));
    return;
  }
  try {
    const handle = handles.get(designId) ?? (await pick.call(window, { suggestedName: name, types: TYPES }));
    const writable = await handle.createWritable();
    await writable.write(blob);
    await writable.close();
    handles.set(designId, handle);
    say(store, t('say.saved', { name: handle.name }));
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return;
    download(name, blob);
    say(store, t('say.saved', { name }));
  }
}

export async function saveBytes(name: string, type: string, bytes: Uint8Array): Promise<void> {
  download(name, new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
}

function download(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** Asks for a file of a kind; null when none was chosen. */
export function pickByInput(accept: string): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null));
    input.addEventListener('cancel', () => resolve(null));
    input.click();
  });
}

/** A name that every file system takes. */
export const fileName = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60) || 'face';
