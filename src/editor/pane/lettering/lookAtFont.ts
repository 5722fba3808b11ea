import { wrap } from 'comlink';
import { askOnce } from '../../planning/askOnce.ts';
import type { FontLook, FontWork } from './fontWorker.ts';

/** A font that takes longer than this to read is given up. */
const PATIENCE_MS = 8000;

/** What a font file is, read in a worker of its own that is ended afterwards; null when it took too long. */
export async function lookAtFont(bytes: Uint8Array, name: string): Promise<FontLook | null> {
  const worker = new Worker(new URL('./fontWorker.ts', import.meta.url), { type: 'module' });
  return askOnce<FontLook>(worker, wrap<FontWork>(worker).look(bytes, name), PATIENCE_MS);
}
