import { useEffect } from 'react';
import { openFrom } from '../kept/file.ts';
import { useStore } from '../state/hooks.ts';
import type { EditorStore } from '../state/store.ts';

/** A design file dropped anywhere is opened; a photo lies under the drawing that is open. */
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
      void openDropped(store, file);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, [store]);
}

async function openDropped(store: EditorStore, file: File): Promise<void> {
  if (store.getState().designId !== null && file.type.startsWith('image/')) {
    const { openPhoto } = await import('../photo/open.ts');
    await openPhoto(store, file);
  } else await openFrom(store, file);
}
