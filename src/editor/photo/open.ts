import { type PictureHead, readPictureHead } from '../../lettering/photo/head.ts';
import { type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import '../words/deskWords.ts';
import { decodePicture } from './decode.ts';
import { newPlacing } from './placing.ts';

export const MOST_BYTES = 32_000_000;
export const MOST_PIXELS = 48_000_000;
/** Where the frame header of a JPEG stands at the latest, behind previews and profiles that cameras put first. */
const HEAD_BYTES = 1_000_000;

/** Whether a file is a picture by its first bytes. */
export const headOf = async (file: Blob): Promise<PictureHead | null> =>
  readPictureHead(new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer()));

/** Lays a photo under the drawing; what cannot be one is told and changes nothing. */
export async function openPhoto(store: EditorStore, file: File): Promise<void> {
  const { name } = file;
  const refuse = (line: string) =>
    store.setState({ notice: { tone: 'bad', text: t('file.refused', { name }), lines: [line] } });
  if (file.size > MOST_BYTES) return refuse(t('photo.tooManyBytes', { most: MOST_BYTES / 1_000_000 }));
  const head = await headOf(file).catch(() => null);
  if (!head) return refuse(t('photo.noPicture'));
  if (head.width * head.height > MOST_PIXELS)
    return refuse(t('photo.tooManyPixels', { most: MOST_PIXELS / 1_000_000 }));
  const bytes = new Blob([file], { type: head.type });
  const image = await decodePicture(bytes).catch(() => null);
  if (!image) return refuse(t('photo.damaged'));
  const { face } = store.getState().edit.shown;
  store.setState({
    photo: {
      file: bytes,
      image,
      placing: newPlacing(image, face),
      opacity: 0.7,
      shown: true,
      locked: false,
    },
    photoMode: 'move',
    photoBefore: store.getState().photo,
    notice: null,
  });
  say(store, t('say.photo', { name }));
}
