import { proxy } from 'comlink';
import { startWorker } from '../../planning/alive.ts';
import type { CurrentPlan } from '../../planning/planner.ts';
import { t } from '../../words/t.ts';
import type { FilesWork, Made } from './filesWorker.ts';

export interface Making {
  /** Ends the making; the call rejects with its reason. */
  readonly signal: AbortSignal;
  /** Longest side of pictures. */
  readonly pixels: number;
  readonly onFile: (done: number, of: number) => void;
}

/**
 * Makes the files whose names begin with one of `wanted`, in a worker that ends when they are made. Rejects where the
 * worker cannot be loaded or dies.
 */
export async function makeFiles(
  plan: CurrentPlan,
  wanted: readonly string[],
  { signal, onFile }: Making,
): Promise<Made> {
  signal.throwIfAborted();
  let end = () => {};
  let cancel = () => {};
  try {
    return await new Promise((resolve, reject) => {
      cancel = () => reject(signal.reason);
      signal.addEventListener('abort', cancel);
      const alive = startWorker<FilesWork>(
        () => new Worker(new URL('./filesWorker.ts', import.meta.url), { type: 'module' }),
        { died: (why) => reject(new Error(t(`export.${why}`))) },
      );
      end = alive.end;
      alive.work.make(plan, wanted, proxy(onFile)).then(resolve, reject);
    });
  } finally {
    signal.removeEventListener('abort', cancel);
    end();
  }
}
