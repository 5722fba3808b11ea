import { useEffect } from 'react';
import { useStore } from '../state/hooks.ts';
import { openFrom } from '../storage/file.ts';

/** A design file dropped anywhere is opened. */
export function useDrop(): void {
  const store = useStore();
  useEffect(() => {
    const over = (e: DragEvent) => {
      if (e.dataTransfer?.types.includes('Files')) e.preventDefault();
    };
    const drop = (e: DragEvent) => {
      const file = e.dataTransfer?.files[0];
      if (!file) return;
      e.preventDefault();
      void openFrom(store, file);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, [store]);
}
