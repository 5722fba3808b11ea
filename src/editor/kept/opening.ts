const KEY = 'showface:opening';

/** The design whose opening failed on this page. */
let failed: string | null = null;

const write = (id: string | null): void => {
  try {
    if (id === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, id);
  } catch {
    // Where nothing is stored, nothing is begun with again either.
  }
};

/** A page that can still be left has not failed: it was left before it had come. */
const left = () => write(null);

/** Begins to open the design that was on the bench last. Until it stands, the next start does without it. */
export function openingBegun(id: string): void {
  write(id);
  addEventListener('pagehide', left, { once: true });
}

/** The bench stands with a design on it. */
export function openingDone(id: string): void {
  removeEventListener('pagehide', left);
  if (failed !== id) write(null);
}

/** Something of the page could not be shown with this design: the next start opens the shelf instead. */
export function openingFailed(id: string): void {
  removeEventListener('pagehide', left);
  failed = id;
  write(id);
}

/** Whether the last start with this design failed. */
export function failedToOpen(id: string): boolean {
  try {
    return localStorage.getItem(KEY) === id;
  } catch {
    return false;
  }
}
