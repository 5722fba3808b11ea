import { wrap } from 'comlink';
import { askOnce } from '../planning/askOnce.ts';
import type { DecodeWork } from './decodeWorker.ts';

/** A picture that takes longer than this to decode is given up. */
const PATIENCE_MS = 15_000;

/** A picture decoded in a worker of its own that is ended afterwards. Rejects when it is damaged or takes too long. */
export async function decodePicture(file: Blob): Promise<ImageBitmap> {
  const worker = new Worker(new URL('./decodeWorker.ts', import.meta.url), { type: 'module' });
  const image = await askOnce(worker, wrap<DecodeWork>(worker).decode(file), PATIENCE_MS);
  if (!image) throw new Error('the picture took too long to decode');
  return image;
}
