import type { Edit } from '../../design/edit/edit.ts';
import type { Point } from '../../geometry/shape.ts';
import { type Trial, tried } from '../document/document.ts';
import { corneredPart, cornerPlace } from '../edit/cornerActs.ts';
import { addedCorner, editsToCorners, movedCorner } from '../edit/corners.ts';
import { commit } from '../state/commit.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, shownNow } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { NO_SNAP, snapPoint } from './snapping.ts';

/** Carries a corner of the selected part; `added` sets a new one after `index` first. A click only chooses it. */
export function startCorner(store: EditorStore, start: Touch, index: number, added: boolean): Gesture | null {
  const found = corneredPart(store.getState());
  if (!found) return null;
  const { edit } = store.getState();
  const { design } = edit;
  const { part, box } = found;
  const corners = added ? addedCorner(found.corners, index, start.face) : found.corners;
  const here = added ? index + 1 : index;
  const from = corners.points[here];
  if (!from) return null;
  if (!added) store.setState({ corner: here });
  const held = new Set([part.id]);
  const others = corners.points.filter((_, i) => i !== here);
  let edits: readonly Edit[] = [];
  let trial: Trial | undefined;
  let begun = false;
  let last = from;

  const carry = (to: Point, touch: Touch) => {
    const raw = touch.shift ? squared(from, to) : to;
    const snap = touch.free ? NO_SNAP : snapPoint(store.getState(), edit.shown, raw, part.id, others);
    const at = { x: raw.x + snap.dx, y: raw.y + snap.dy };
    last = at;
    edits = editsToCorners(design, part, box, movedCorner(corners, here, at));
    const text = `${lengthText(design, at.x)} · ${lengthText(design, at.y)}`;
    const state = store.getState();
    const shown = tried(state.edit, edits, held, shownNow(state));
    trial = { doc: state.edit, edits, shown };
    propose(store, {
      shown,
      guides: snap.guides,
      at: touch.px,
      text,
    });
    store.setState({ corner: here });
  };

  return {
    move: (touch) => {
      if (!begun && !strayed(start.px, touch.px)) return;
      begun = true;
      carry({ x: from.x + touch.face.x - start.face.x, y: from.y + touch.face.y - start.face.y }, touch);
    },
    end: () => {
      clearGesture(store);
      if (!begun || edits.length === 0) return;
      const label = t(added ? 'did.addCorner' : 'did.corner', { number: here + 1, name: part.name });
      commit(store, edits, label, { held, trial, say: cornerPlace(store, label, last) });
    },
    cancel: () => {
      clearGesture(store);
      store.setState({ corner: added ? null : here });
    },
  };
}

/** Along the axis on which it went farther. */
const squared = (from: Point, to: Point): Point =>
  Math.abs(to.x - from.x) >= Math.abs(to.y - from.y) ? { x: to.x, y: from.y } : { x: from.x, y: to.y };
