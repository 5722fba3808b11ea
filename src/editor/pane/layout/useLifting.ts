import { type RefObject, useEffect } from 'react';
import { useStore } from '../../state/hooks.ts';

/** Holds a list still while a finger carries something out of it: React listens to touches passively. */
export function useLifting(list: RefObject<HTMLElement | null>): void {
  const store = useStore();
  useEffect(() => {
    const element = list.current;
    const hold = (e: TouchEvent) => {
      if (store.getState().lifted) e.preventDefault();
    };
    element?.addEventListener('touchmove', hold, { passive: false });
    return () => element?.removeEventListener('touchmove', hold);
  }, [list, store]);
}
