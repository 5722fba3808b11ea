import { surrounds } from '../../geometry/box.ts';
import { intersect } from '../../geometry/clip.ts';
import { boxesMeet, regionOfBox } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Layout } from '../../layout/laid.ts';
import { groupOf } from '../edit/movable.ts';
import { select } from '../state/commit.ts';
import { type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';

/** What a frame takes: pulled to the right what lies wholly inside, to the left what it touches. */
export function framed(layout: Layout, from: Point, to: Point): string[] {
  const frame = boxOfPoints([from, to]);
  if (to.x >= from.x) return [...layout.boxes].flatMap(([id, box]) => (surrounds(frame, box) ? [id] : []));
  const area = regionOfBox(frame);
  // A frame of molding is touched by its wood, not by its opening; a row by its members.
  return layout.parts
    .filter(({ box, region }) => boxesMeet(box, frame) && intersect(region, area).length > 0)
    .map(({ part }) => part);
}

/**
 * Pulls a frame: to the right it selects what lies wholly inside, to the left what it touches. With Shift that is added
 * to what already was.
 */
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
      const { design, shown } = edit;
      const found = framed(shown.layout, start.face, touch.face).map((id) => groupOf(design, id) ?? id);
      const selection = [...new Set([...kept, ...found])];
      select(store, selection);
      say(store, t('say.selected', { count: selection.length }));
    },
    cancel: () => clearGesture(store),
  };
}
