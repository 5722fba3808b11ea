import { useSyncExternalStore } from 'react';

export type Width = 'narrow' | 'middle' | 'wide';

const WIDE = '(min-width: 1200px)';
const NARROW = '(max-width: 759px)';

/** How much room there is: a part list of its own only where the drawing keeps enough. */
export function useWidth(): Width {
  return useSyncExternalStore(
    (listener) => {
      const queries = [matchMedia(WIDE), matchMedia(NARROW)];
      for (const q of queries) q.addEventListener('change', listener);
      return () => {
        for (const q of queries) q.removeEventListener('change', listener);
      };
    },
    () => (matchMedia(WIDE).matches ? 'wide' : matchMedia(NARROW).matches ? 'narrow' : 'middle'),
  );
}
