import type { KeyboardEvent } from 'react';

/** Lets Escape close what stands on the drawing from wherever in it, before any field in it takes the key. */
export const closesOnEscape =
  (onDone: () => void) =>
  (e: KeyboardEvent): void => {
    if (e.key !== 'Escape') return;
    e.stopPropagation();
    onDone();
  };
