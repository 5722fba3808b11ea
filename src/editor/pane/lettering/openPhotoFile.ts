import { wrap } from 'comlink';
import { headOf, MOST_BYTES, MOST_PIXELS } from '../../photo/open.ts';
import { askOnce } from '../../planning/askOnce.ts';
import { t } from '../../words/t.ts';
import type { PhotoWork, ReadPhoto } from './photoWorker.ts';

/** A photo that takes longer than this to read is given up: the largest are written several times. */
const PATIENCE_MS = 60_000;

/** Reads a photo that the person chose for a printed sign; in words, why it cannot be used when it cannot. */
export async function openPhotoFile(file: File): Promise<ReadPhoto | string> {
  if (file.size > MOST_BYTES) return t('photo.tooManyBytes', { most: MOST_BYTES / 1_000_000 });
  const head = await headOf(file).catch(() => null);
  if (!head) return t('photo.noPicture');
  if (head.width * head.height > MOST_PIXELS)
    return t('photo.tooManyPixels', { most: MOST_PIXELS / 1_000_000 });
  const worker = new Worker(new URL('./photoWorker.ts', import.meta.url), { type: 'module' });
  const bytes = new Blob([file], { type: head.type });
  const asked = wrap<PhotoWork>(worker).read(bytes, head);
  try {
    return (await askOnce<ReadPhoto>(worker, asked, PATIENCE_MS)) ?? t('file.too-slow', { name: file.name });
  } catch {
    return t('photo.damaged');
  }
}
