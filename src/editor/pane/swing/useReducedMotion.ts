import { useSyncExternalStore } from 'react';

const QUERY = '(prefers-reduced-motion: reduce)';

/** The device asks for no motion. */
export const useReducedMotion = (): boolean =>
  useSyncExternalStore(
    (listener) => {
      const query = matchMedia(QUERY);
      query.addEventListener('change', listener);
      return () => query.removeEventListener('change', listener);
    },
    () => matchMedia(QUERY).matches,
  );
