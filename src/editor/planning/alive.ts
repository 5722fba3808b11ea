import { expose, type Remote, wrap } from 'comlink';
import type { Death } from './planLife.ts';

/** What every worker answers besides its own work. */
export interface Living {
  /** Settles once the worker runs: with true where it holds the lock of that name for as long as it lives. */
  readonly live: (lock: string) => Promise<boolean>;
}

/** In a worker: offers its work, and a sign of life. */
export function offer(work: object): void {
  const living: Living = {
    live: (name) =>
      new Promise((resolve) => {
        if (!navigator.locks) return resolve(false);
        const hold = () => {
          resolve(true);
          return new Promise<never>(() => {});
        };
        // Locks are blocked where storage is.
        navigator.locks.request(name, hold).catch(() => resolve(false));
      }),
  };
  expose({ ...work, ...living });
}

export interface Alive<T> {
  readonly work: Remote<T & Living>;
  /** Ends it at once. */
  readonly end: () => void;
}

let started = 0;

/** A worker, or, where the browser allows none, what tells of its error as one whose script does not load. */
function madeBy(make: () => Worker): Worker {
  try {
    return make();
  } catch {
    const { port1 } = new MessageChannel();
    queueMicrotask(() => port1.dispatchEvent(new Event('error')));
    return Object.assign(port1, { terminate: () => port1.close() }) as unknown as Worker;
  }
}

/**
 * Starts a worker and tells when it runs and when it has died: its script did not load or it threw (an error event),
 * or it ended in whatever way, for want of memory or by itself (the lock that it held is free). Tells of one death,
 * and of none once it was ended.
 */
export function startWorker<T>(
  make: () => Worker,
  told: { readonly ready?: () => void; readonly died: (why: Death) => void },
): Alive<T> {
  const ended = new AbortController();
  let ready = false;
  const worker = madeBy(make);
  const end = () => {
    ended.abort();
    worker.terminate();
  };
  const die = (why: Death) => {
    if (ended.signal.aborted) return;
    end();
    told.died(why);
  };
  worker.addEventListener('error', (e) => {
    e.preventDefault();
    die(ready ? 'died' : 'script');
  });
  const work = wrap<T & Living>(worker);
  const lock = `showface:worker:${crypto.getRandomValues(new Uint32Array(2)).join('-')}-${started++}`;
  const living = work as unknown as Remote<Living>;
  void living.live(lock).then((held) => {
    if (ended.signal.aborted) return;
    ready = true;
    told.ready?.();
    if (!held) return;
    const { signal } = ended;
    navigator.locks.request(lock, { signal }, () => die('died')).catch(() => undefined);
  });
  return { work, end };
}
