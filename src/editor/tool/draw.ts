import { preview } from '../../design/state.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { createItem, DEFAULT_SIZE } from '../action/create.ts';
import { freeId } from '../action/ids.ts';
import { commit } from '../state/commit.ts';
import { faceFor, layoutOf } from '../state/derive.ts';
import { propose } from '../state/propose.ts';
import type { EditorStore } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { t } from '../words/t.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { type InHand, NO_SNAP, ruleEdits, type Snap, snapInHand } from './snapping.ts';
import type { DrawnKind } from './tools.ts';

/** Draws a new part from corner to corner; a plain click places one of usual size. */
export function startDraw(store: EditorStore, start: Touch, kind: DrawnKind): Gesture {
  const { edit } = store.getState();
  const layout = layoutOf(edit.design);
  const id = freeId(edit.design, kind);
  const hand = (now: Box, grip: InHand['grip']): InHand => ({ moving: [{ id, box: now }], grip });
  const first = start.free
    ? NO_SNAP
    : snapInHand(store.getState(), layout, hand(pointBox(start.face), { x: 'move', y: 'move' }));
  const corner = { x: start.face.x + first.dx, y: start.face.y + first.dy };
  let box: Box | null = null;
  let snap: Snap = NO_SNAP;
  let grip: InHand['grip'] = { x: 'high', y: 'high' };
  let last = start;
  /** Whether the drag went more across than up: the side that a typed measure means. */
  let wide = true;

  const span = (next: Box) => {
    box = next;
    const made = createItem(edit.design, kind, next);
    const text = `${lengthText(edit.design, next.w)} × ${lengthText(edit.design, next.h)}`;
    propose(store, { edits: made.edits, held: new Set([made.id]), guides: snap.guides, at: last.px, text });
  };

  return {
    move: (touch) => {
      if (!box && !strayed(start.px, touch.px)) return;
      last = touch;
      wide = Math.abs(touch.face.x - corner.x) >= Math.abs(touch.face.y - corner.y);
      const raw = spanned(corner, touch.face, touch.shift);
      grip = { x: touch.face.x < corner.x ? 'low' : 'high', y: touch.face.y < corner.y ? 'low' : 'high' };
      // A strip's width is its stock's: only its length is drawn.
      if (kind === 'strip') grip = raw.w >= raw.h ? { ...grip, y: null } : { ...grip, x: null };
      snap = touch.free ? NO_SNAP : snapInHand(store.getState(), layout, hand(raw, grip));
      span(spanned(corner, { x: touch.face.x + snap.dx, y: touch.face.y + snap.dy }, touch.shift));
    },
    typed: (mm) => {
      if (!box) return;
      span(wide ? { ...box, w: mm } : { ...box, h: mm });
    },
    end: (touch) => {
      clearGesture(store);
      const size = DEFAULT_SIZE[kind];
      const final = box ?? {
        x: touch.face.x - size.w / 2,
        y: touch.face.y - size.h / 2,
        w: size.w,
        h: size.h,
      };
      finishDraw(store, kind, final, box ? { snap, grip } : null);
    },
    cancel: () => clearGesture(store),
  };
}

/** Places a part of usual size in the middle of the face: what a key does where a pointer draws. */
export function placeInMiddle(store: EditorStore, kind: DrawnKind, stock?: string): void {
  const face = faceFor(store.getState().edit.design.bed);
  const { w, h } = DEFAULT_SIZE[kind];
  finishDraw(store, kind, { x: (face.width - w) / 2, y: (face.height - h) / 2, w, h }, null, stock);
}

const pointBox = (p: Point): Box => ({ x: p.x, y: p.y, w: 0, h: 0 });

/** Puts a new part into the design, selected, and goes back to selecting. */
export function finishDraw(
  store: EditorStore,
  kind: DrawnKind,
  box: Box,
  held: { readonly snap: Snap; readonly grip: InHand['grip'] } | null,
  stock?: string,
): void {
  const { edit } = store.getState();
  const made = createItem(edit.design, kind, box, stock);
  const holding = held
    ? ruleEdits(preview(edit, made.edits), { moving: [{ id: made.id, box }], grip: held.grip }, held.snap)
    : [];
  const edits = [...made.edits, ...holding];
  const label = t('did.add', { name: made.name });
  const size = t('say.size', {
    width: lengthText(edit.design, made.box.w),
    height: lengthText(edit.design, made.box.h),
  });
  if (commit(store, edits, label, { selection: [made.id], say: `${label}: ${size}` })) {
    store.setState((s) => ({ tool: 'select', tab: s.step === 'layout' ? 'part' : s.tab }));
  }
}

function spanned(a: Point, b: Point, square: boolean): Box {
  let w = Math.abs(b.x - a.x);
  let h = Math.abs(b.y - a.y);
  if (square) w = h = Math.max(w, h);
  return { x: b.x < a.x ? a.x - w : a.x, y: b.y < a.y ? a.y - h : a.y, w, h };
}
