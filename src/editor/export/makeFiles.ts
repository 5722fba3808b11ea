import { proxy, wrap } from 'comlink';
import type { Plan } from '../../plan/types.ts';
import type { FilesWork, MadeFile } from './filesWorker.ts';

/** Makes the files whose names begin with one of `wanted`, in a worker that ends when they are made. */
export async function makeFiles(
  plan: Plan,
  wanted: readonly string[],
  onFile: (done: number, of: number) => void,
): Promise<readonly MadeFile[]> {
  const worker = new Worker(new URL('./filesWorker.ts', import.meta.url), { type: 'module' });
  try {
    return await wrap<FilesWork>(worker).make(plan, wanted, proxy(onFile));
  } finally {
    worker.terminate();
  }
}
