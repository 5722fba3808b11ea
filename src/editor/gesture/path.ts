import { newPart } from '../../design/defaults.ts';
import type { Edit } from '../../design/edit/edit.ts';
import { leastCorners, MOST_CORNERS } from '../../design/limits.ts';
import { preview } from '../../design/state.ts';
import type { Point } from '../../geometry/shape.ts';
import { tried } from '../document/document.ts';
import { named } from '../edit/arrange.ts';
import { boxedCorners } from '../edit/corners.ts';
import { createItem } from '../edit/create.ts';
import { nameOf } from '../edit/movable.ts';
import { commit } from '../state/commit.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, say, shownNow, toScreen } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { clearGesture, type Gesture, type Touch } from './gesture.ts';
import { NO_SNAP, snapPoint } from './snapping.ts';

/** A press this near to the first corner closes the path, this near to the last one ends it; pixels. */
const NEAR = { mouse: 9, finger: 22 } as const;

/** One click of the path tool: sets a corner, or closes the path on its first one. */
export function startPathCorner(store: EditorStore): Gesture {
  return {
    move: (touch) => hoverPath(store, touch),
    end: (touch) => {
      const { path, view } = store.getState();
      const near = (p: Point | undefined) => {
        if (!p) return false;
        const px = toScreen(view, p);
        return Math.hypot(px.x - touch.px.x, px.y - touch.px.y) <= NEAR[touch.touch ? 'finger' : 'mouse'];
      };
      if (path.length >= leastCorners(true) && near(path[0])) return endPath(store, true);
      // The second press of a double click falls on the corner that the first one set.
      if (near(path.at(-1))) return;
      if (path.length >= MOST_CORNERS) return endPath(store, false);
      const at = cornerAt(store, touch).at;
      store.setState({ path: [...path, at] });
      say(store, t('say.corner', { number: path.length + 1 }));
      hoverPath(store, touch);
    },
    cancel: () => cancelPath(store),
  };
}

/** Shows the run as it would be with a corner at the pointer. */
export function hoverPath(store: EditorStore, touch: Touch): void {
  const { path, edit } = store.getState();
  const { at, guides } = cornerAt(store, touch);
  const last = path.at(-1);
  const length = last ? Math.hypot(at.x - last.x, at.y - last.y) : 0;
  // A leg of no length has no direction to lay stock along.
  const made = length > 1 ? runOf(store, [...path, at], false) : null;
  const text = last ? lengthText(edit.design, length) : '';
  const state = store.getState();
  propose(store, {
    shown: tried(edit, made?.edits ?? [], new Set(made ? [made.id] : []), shownNow(state)),
    guides,
    at: touch.px,
    text,
  });
}

/** Makes the run of the corners set so far; with too few of them nothing is made. */
export function endPath(store: EditorStore, closed: boolean): void {
  const { path } = store.getState();
  cancelPath(store);
  if (path.length < leastCorners(closed)) return;
  const made = runOf(store, path, closed);
  const { edit } = store.getState();
  const edits = named(edit.shown, made.edits, [{ id: made.id, made: 'here' }]);
  const label = t('did.add', { name: nameOf(preview(edit, edits), made.id) });
  if (commit(store, edits, label, { selection: [made.id] })) {
    store.setState((s) => ({ tool: 'select', corner: null, tab: s.step === 'layout' ? 'part' : s.tab }));
  }
}

/** Takes the last corner back; with none left, nothing happens. */
export function dropLastCorner(store: EditorStore): void {
  clearGesture(store);
  store.setState((s) => ({ path: s.path.slice(0, -1) }));
}

export function cancelPath(store: EditorStore): void {
  clearGesture(store);
  store.setState({ path: [] });
}

function cornerAt(store: EditorStore, touch: Touch) {
  const { path, edit } = store.getState();
  const snap = touch.free ? NO_SNAP : snapPoint(store.getState(), edit.shown, touch.face, null, path);
  const at = { x: touch.face.x + snap.dx, y: touch.face.y + snap.dy };
  const last = path.at(-1);
  if (!touch.shift || !last) return { at, guides: snap.guides };
  const across = Math.abs(at.x - last.x) >= Math.abs(at.y - last.y);
  return { at: across ? { x: at.x, y: last.y } : { x: last.x, y: at.y }, guides: snap.guides };
}

function runOf(store: EditorStore, corners: readonly Point[], closed: boolean) {
  const { design } = store.getState().edit;
  const { box, points } = boxedCorners(corners);
  const { edits, id, name } = createItem(design, 'run', box, store.getState().owned);
  const shaped = edits.map((edit): Edit => {
    if (edit.kind !== 'insert' || edit.list !== 'parts') return edit;
    const run = edit.item.kind === 'run' ? edit.item : newPart('run', { id, name, box });
    return { ...edit, item: { ...run, box, path: { form: 'points', points, closed } } };
  });
  return { edits: shaped, id };
}
