import type { Layer } from 'konva/lib/Layer';
import { type RefObject, useEffect, useRef } from 'react';
import { useStore } from '../state/hooks.ts';
import type { EditorState } from '../state/store.ts';

/** Draws a layer in the next frame whenever the store says something else for it, without rendering anything. */
export function useOwnFrames(
  layer: RefObject<Layer | null>,
  differs: (now: EditorState, before: EditorState) => boolean,
): void {
  const store = useStore();
  const test = useRef(differs);
  test.current = differs;
  useEffect(
    () =>
      store.subscribe((now, before) => {
        if (test.current(now, before)) layer.current?.batchDraw();
      }),
    [store, layer],
  );
}
