import { useSyncExternalStore } from 'react';

const HASH = '#bench';

/** Whether the page shows the pieces at the saw, by its address. */
export function useAtTheSaw(): boolean {
  return useSyncExternalStore(
    (listener) => {
      addEventListener('hashchange', listener);
      return () => removeEventListener('hashchange', listener);
    },
    () => location.hash === HASH,
  );
}

export function goToSaw(): void {
  location.hash = HASH;
}

export function leaveSaw(): void {
  // Without a trace in the address; the event tells those who watch it.
  history.pushState(null, '', `${location.pathname}${location.search}`);
  dispatchEvent(new HashChangeEvent('hashchange'));
}
