import type { Axis } from '../../design/schema.ts';
import { boxAround } from '../../geometry/box.ts';
import { AXES, sizeOf } from '../../layout/span.ts';
import type { Mm } from '../../measure/units.ts';
import type { Pull } from '../drawing/handles.ts';
import { movableBoxes } from '../edit/movable.ts';
import { editsToResize, type Resized, type Sizing } from '../edit/resizeSelection.ts';
import { commitSizes } from '../edit/sizeSelection.ts';
import { propose } from '../state/propose.ts';
import type { EditorStore } from '../state/store.ts';
import { lengthText } from '../words/text.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { NO_SNAP, snapPoint } from './snapping.ts';

const LEAST_SIZE: Mm = 1;

/** Pulls one or two sides of the frame around several selected parts, which are sized together. */
export function startResizeMany(store: EditorStore, start: Touch, pull: Pull): Gesture | null {
  const { design, selection, shown: rest } = store.getState().edit;
  const before = movableBoxes(design, rest.layout.boxes, selection);
  const box = boxAround(before.values());
  if (!box) return null;
  /** What the last step came to: null where nothing gives way, undefined before the first. */
  let resized: Resized | null | undefined;
  let last = start;

  const size = (sizes: Readonly<Record<Axis, Mm>>, guides: ReturnType<typeof snapPoint>['guides']) => {
    const sizings = AXES.flatMap((axis): Sizing[] =>
      pull[axis] === 0
        ? []
        : [{ axis, size: Math.max(LEAST_SIZE, sizes[axis]), keep: pull[axis] > 0 ? 'low' : 'high' }],
    );
    resized = editsToResize(rest, selection, sizings);
    const shown = resized?.shown ?? rest;
    const now = boxAround(movableBoxes(shown.design, shown.layout.boxes, selection).values()) ?? box;
    const text = sizings.map(({ axis }) => lengthText(design, sizeOf(now, axis))).join(' × ');
    propose(store, { shown, guides, at: last.px, text });
  };

  return {
    move: (touch) => {
      if (resized === undefined && !strayed(start.px, touch.px)) return;
      last = touch;
      const by = { x: touch.face.x - start.face.x, y: touch.face.y - start.face.y };
      const at = {
        x: box.x + (box.w * (pull.x + 1)) / 2 + (pull.x === 0 ? 0 : by.x),
        y: box.y + (box.h * (pull.y + 1)) / 2 + (pull.y === 0 ? 0 : by.y),
      };
      const { dx, dy, guides } = touch.free ? NO_SNAP : snapPoint(store.getState(), rest, at, null, []);
      size(
        { x: box.w + pull.x * (by.x + dx), y: box.h + pull.y * (by.y + dy) },
        guides.filter((guide) => pull[guide.axis] !== 0),
      );
    },
    typed: (mm) => size({ x: pull.x === 0 ? box.w : mm, y: pull.x === 0 ? mm : box.h }, []),
    end: () => {
      clearGesture(store);
      if (resized !== undefined) commitSizes(store, resized);
    },
    cancel: () => clearGesture(store),
  };
}
