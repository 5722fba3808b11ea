import { transact } from '../kept/database.ts';
import { photoKeys } from '../kept/shelf.ts';
import type { Photo } from '../state/photo.ts';
import type { EditorStore } from '../state/store.ts';
import { decodePicture } from './decode.ts';

type Lie = Omit<Photo, 'file' | 'image'>;

const QUIET_MS = 300;

/** Takes a design's photo off the device. */
const forgetPhoto = (id: string): Promise<void> =>
  transact('readwrite', async (tx) => {
    for (const key of photoKeys(id)) tx.drop(key);
  });

async function bringBack(store: EditorStore, id: string): Promise<void> {
  const [fileKey, lieKey] = photoKeys(id);
  const [file, lie] = await transact('readonly', (tx) =>
    Promise.all([tx.get<Blob>(fileKey), tx.get<Lie>(lieKey)]),
  );
  if (!file || !lie) return;
  const image = await decodePicture(file);
  if (store.getState().designId === id) store.setState({ photo: { ...lie, file, image } });
}

/**
 * Keeps the photo of the open design on this device and brings it back with it. Where nothing can be kept, the
 * photo lasts as long as the page. Gives what ends the keeping.
 */
export function keepPhotos(store: EditorStore): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** What is still to be written; `whole`: with the bytes of the picture. */
  let due: { readonly id: string; readonly photo: Photo; readonly whole: boolean } | null = null;
  const flush = () => {
    clearTimeout(timer);
    const writing = due;
    due = null;
    if (writing) void write(writing.id, writing.photo, writing.whole).catch(() => undefined);
  };
  const open = (id: string | null) => {
    if (id) void bringBack(store, id).catch(() => undefined);
  };
  open(store.getState().designId);
  const stop = store.subscribe((now, before) => {
    const { designId: id, photo } = now;
    if (id !== before.designId) {
      flush();
      store.setState({ photo: null, photoBefore: null, photoMode: 'rest' });
      open(id);
      return;
    }
    if (photo === before.photo || id === null) return;
    clearTimeout(timer);
    if (!photo) {
      due = null;
      void forgetPhoto(id).catch(() => undefined);
      return;
    }
    due = { id, photo, whole: photo.file !== before.photo?.file || (due?.whole ?? false) };
    timer = setTimeout(flush, QUIET_MS);
  });
  return () => {
    stop();
    flush();
  };
}

function write(id: string, { file, image: _, ...lie }: Photo, whole: boolean): Promise<void> {
  const [fileKey, lieKey] = photoKeys(id);
  return transact('readwrite', async (tx) => {
    // The bytes are written once, how the photo lies whenever that changes.
    if (whole) tx.put(fileKey, file);
    tx.put(lieKey, lie);
  });
}
