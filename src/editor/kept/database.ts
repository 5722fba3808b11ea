/**
 * A small door to IndexedDB: one store of values by key, whole transactions, each on the disk before it counts
 * as done. Failures (blocked, private, full) come out as rejections.
 */
const NAME = 'showface';
const STORE = 'designs';
/** A browser that answers nothing at all is taken as one that keeps nothing. */
const PATIENCE_MS = 3000;

let opening: Promise<IDBDatabase> | null = null;

function open(): Promise<IDBDatabase> {
  opening ??= new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    const timer = setTimeout(() => reject(new Error('The storage does not answer.')), PATIENCE_MS);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onerror = () => {
      clearTimeout(timer);
      reject(request.error);
    };
    request.onsuccess = () => {
      clearTimeout(timer);
      const database = request.result;
      // The browser may close it (storage cleared, device asleep); the next call opens it anew.
      database.onclose = () => {
        opening = null;
      };
      database.onversionchange = () => {
        database.close();
        opening = null;
      };
      resolve(database);
    };
  }).catch((error: unknown) => {
    opening = null;
    throw error;
  });
  return opening;
}

/** What can be done within one transaction. */
export interface Transaction {
  readonly get: <T>(key: string) => Promise<T | undefined>;
  readonly put: (key: string, value: unknown) => void;
  readonly drop: (key: string) => void;
  /** Keys that begin with a text, sorted. */
  readonly keys: (prefix: string) => Promise<string[]>;
  /** Undoes everything of this transaction; the call is rejected. */
  readonly abort: () => void;
}

/** Runs reads and writes that happen wholly or not at all; settles when they have. */
export async function transact<T>(
  mode: IDBTransactionMode,
  run: (tx: Transaction) => Promise<T>,
): Promise<T> {
  const database = await open();
  const transaction = database.transaction(STORE, mode, { durability: 'strict' });
  const done = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new DOMException('Undone.', 'AbortError'));
  });
  const store = transaction.objectStore(STORE);
  const result = run({
    get: (key) => answer(store.get(key)),
    put: (key, value) => void store.put(value, key),
    drop: (key) => void store.delete(key),
    keys: (prefix) =>
      answer(store.getAllKeys(IDBKeyRange.bound(prefix, `${prefix}\uffff`))) as Promise<string[]>,
    abort: () => transaction.abort(),
  }).catch((error: unknown) => {
    try {
      transaction.abort();
    } catch {
      // It has ended by itself already.
    }
    throw error;
  });
  const [value] = await Promise.all([result, done]);
  return value;
}

function answer<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
