import type { Edit } from '../../design/edit/edit.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { type Trial, tried } from '../document/document.ts';
import { type Cornered, corneredPart, cornerPlace } from '../edit/cornerActs.ts';
import {
  addedCorner,
  bentSide,
  bowedSide,
  type Corners,
  editsToCorners,
  letterWay,
  madeCorner,
  middlesOf,
  movedCorner,
  sidesOfCorners,
} from '../edit/corners.ts';
import { commit } from '../state/commit.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, shownNow } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { placesOf } from './opening.ts';
import { NO_SNAP, snapPoint } from './snapping.ts';

/** What a hand has of an outline: a corner, a side or a handle of one. */
interface Aim {
  /** The corner that it belongs to, and whether that is chosen by a mere click. */
  readonly corner: number;
  readonly chooses: boolean;
  /** Where it is taken. */
  readonly from: Point;
  /** Corners that it may snap to. */
  readonly others: readonly Point[];
  readonly moved: (to: Point, touch: Touch) => Corners;
  /** Said beside the hand, and aloud once it is let go. */
  readonly text: (at: Point, corners: Corners) => string;
  readonly label: string;
  readonly say: (label: string, at: Point, corners: Corners) => string;
}

/** Carries a corner of the selected part; `added` sets a new one after `index` first. A click only chooses it. */
export function startCorner(store: EditorStore, start: Touch, index: number, added: boolean): Gesture | null {
  const found = corneredPart(store.getState());
  if (!found) return null;
  const { design } = store.getState().edit;
  const corners = added ? addedCorner(found.corners, index, start.face) : found.corners;
  const corner = added ? index + 1 : index;
  const from = corners.points[corner];
  if (!from) return null;
  return carried(store, start, found, {
    corner,
    chooses: !added,
    from,
    others: corners.points.filter((_, i) => i !== corner),
    moved: (to) => movedCorner(corners, corner, to),
    text: (at) => `${lengthText(design, at.x)} · ${lengthText(design, at.y)}`,
    label: t(added ? 'did.addCorner' : 'did.corner', { number: corner + 1, name: found.name }),
    say: (label, at) => cornerPlace(store, label, at),
  });
}

/** Nearer to its straight line than this a side that is bowed by hand is straight, in pixels. */
const STRAIGHT = 5;

/** Bows the side after a corner through where the hand is. */
export function startBow(store: EditorStore, start: Touch, index: number): Gesture | null {
  const found = corneredPart(store.getState());
  const from = found && middlesOf(found.corners)[index];
  if (!from) return null;
  const { edit, view } = store.getState();
  const { corners, name } = found;
  const riseText = ({ points }: Corners) => {
    const side = points[index]?.side;
    return lengthText(edit.design, side?.as === 'rise' ? side.rise : 0);
  };
  return carried(store, start, found, {
    corner: index,
    chooses: true,
    from,
    others: corners.points,
    moved: (to, { free }) => {
      const bowed = bowedSide(corners, index, to);
      const side = bowed.points[index]?.side;
      const flat = side?.as === 'rise' && Math.abs(side.rise) * view.scale < STRAIGHT && !free;
      return flat ? madeCorner(corners, index, { side: undefined }) : bowed;
    },
    text: (_, bowed) => t('corners.riseIs', { rise: riseText(bowed) }),
    label: t('did.bow', { number: index + 1, name }),
    say: (_, __, bowed) => t('say.bow', { number: index + 1, name, rise: riseText(bowed) }),
  });
}

/** Carries one of the handles of a smooth side. */
export function startBend(store: EditorStore, start: Touch, index: number, which: 0 | 1): Gesture | null {
  const found = corneredPart(store.getState());
  const side = found ? sidesOfCorners(found.corners)[index] : undefined;
  if (!found || side?.kind !== 'cubic') return null;
  const { design } = store.getState().edit;
  return carried(store, start, found, {
    corner: index,
    chooses: false,
    from: which === 0 ? side.h1 : side.h2,
    others: found.corners.points,
    moved: (to) => bentSide(found.corners, index, which, to),
    text: (at) => `${lengthText(design, at.x)} · ${lengthText(design, at.y)}`,
    label: t('did.bend', { number: index + 1, name: found.name }),
    say: (label, at) => cornerPlace(store, label, at),
  });
}

function carried(store: EditorStore, start: Touch, { part, box, opening }: Cornered, aim: Aim): Gesture {
  const { edit } = store.getState();
  const { from, corner } = aim;
  if (aim.chooses) store.setState({ corner });
  const held = new Set([part.id]);
  // What is cut out of a part, or is written in it, stays in it, and is in line with it where its corners are.
  const stays = opening !== null || letterWay(part) !== null;
  const others = stays ? [...aim.others, ...placesOf(box)] : aim.others;
  const kept = (p: Point) => (stays ? nearestIn(box, p) : p);
  let edits: readonly Edit[] = [];
  let trial: Trial | undefined;
  let begun = false;
  let said = '';

  const carry = (to: Point, touch: Touch) => {
    const raw = touch.shift ? squared(from, to) : to;
    const snap = touch.free ? NO_SNAP : snapPoint(store.getState(), edit.shown, raw, part.id, others);
    const at = kept({ x: raw.x + snap.dx, y: raw.y + snap.dy });
    const corners = aim.moved(at, touch);
    edits = editsToCorners(edit.design, part, box, corners, opening);
    said = aim.say(aim.label, at, corners);
    const state = store.getState();
    const shown = tried(state.edit, edits, held, shownNow(state));
    trial = { doc: state.edit, edits, shown };
    propose(store, { shown, guides: snap.guides, at: touch.px, text: aim.text(at, corners) });
    store.setState({ corner });
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
      commit(store, edits, aim.label, { held, trial, say: said });
    },
    cancel: () => {
      clearGesture(store);
      store.setState({ corner: aim.chooses ? corner : null });
    },
  };
}

const nearestIn = ({ x, y, w, h }: Box, p: Point): Point => ({
  x: Math.max(x, Math.min(p.x, x + w)),
  y: Math.max(y, Math.min(p.y, y + h)),
});

/** Along the axis on which it went farther. */
const squared = (from: Point, to: Point): Point =>
  Math.abs(to.x - from.x) >= Math.abs(to.y - from.y) ? { x: to.x, y: from.y } : { x: from.x, y: to.y };
