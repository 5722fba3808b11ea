import type { KeyboardEvent } from 'react';

/** Whether a key takes a bridge away; if so it is kept from the face, where it would take the sign away. */
export function takesAway(e: KeyboardEvent): boolean {
  if (e.key !== 'Delete' && e.key !== 'Backspace') return false;
  e.preventDefault();
  e.stopPropagation();
  return true;
}
