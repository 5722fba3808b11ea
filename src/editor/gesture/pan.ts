import type { EditorStore } from '../state/store.ts';
import type { Gesture, Touch } from './gesture.ts';

/** Pushes the drawing about under the hand. */
export function startPan(store: EditorStore, start: Touch): Gesture {
  const { view } = store.getState();
  return {
    move: (touch) =>
      store.setState({
        fitted: false,
        view: { ...view, x: view.x + touch.px.x - start.px.x, y: view.y + touch.px.y - start.px.y },
      }),
    end: () => {},
    cancel: () => store.setState({ view }),
  };
}
