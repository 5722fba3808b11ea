import { groupOf } from '../action/movable.ts';
import { select } from '../state/commit.ts';
import { layoutOf } from '../state/derive.ts';
import { type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';

/** Pulls a frame; what lies wholly inside is selected. With Shift it is added to what already was. */
export function startFrameSelect(store: EditorStore, start: Touch): Gesture {
  const { edit } = store.getState();
  let begun = false;
  return {
    move: (touch) => {
      if (!begun && !strayed(start.px, touch.px)) return;
      begun = true;
      store.setState({ frame: { from: start.face, to: touch.face } });
    },
    end: (touch) => {
      clearGesture(store);
      const kept = start.shift ? edit.selection : [];
      if (!begun) {
        if (edit.selection.length > 0 && !start.shift) select(store, []);
        return;
      }
      const x0 = Math.min(start.face.x, touch.face.x);
      const x1 = Math.max(start.face.x, touch.face.x);
      const y0 = Math.min(start.face.y, touch.face.y);
      const y1 = Math.max(start.face.y, touch.face.y);
      const { design } = edit;
      const found = [...layoutOf(design).boxes]
        .filter(([, b]) => b.x >= x0 && b.x + b.w <= x1 && b.y >= y0 && b.y + b.h <= y1)
        .map(([id]) => groupOf(design, id) ?? id);
      const selection = [...new Set([...kept, ...found])];
      select(store, selection);
      say(store, t('say.selected', { count: selection.length }));
    },
    cancel: () => clearGesture(store),
  };
}
