import { preview } from '../../design/state.ts';
import type { Box } from '../../geometry/shape.ts';
import { createItem, DEFAULT_SIZE } from '../action/create.ts';
import { freeId } from '../action/ids.ts';
import { canvasElement, isOnCanvas, onCanvas } from '../canvas/place.ts';
import { layoutOf } from '../state/derive.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, toFace } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { finishDraw } from './draw.ts';
import { clearGesture, strayed, type Touch } from './gesture.ts';
import { carry } from './held.ts';
import { NO_SNAP, ruleEdits, type Snap, snapInHand } from './snapping.ts';
import type { DrawnKind } from './tools.ts';

const MOVE = { x: 'move', y: 'move' } as const;

/** A finger that has rested this long on a piece of stock lifts it out of the list. */
const LIFT_MS = 300;

let lifted = false;

/** Whether a finger carries a piece of stock: the list it came from must not scroll then. */
export const isLifted = (): boolean => lifted;

/**
 * Drags a piece of stock from the palette onto the face. It begins outside of the drawing, so it follows
 * the pointer through the window; released beside the drawing it leaves no trace. A press that goes
 * nowhere puts the piece in the middle of what is seen.
 */
export function startPlacing(store: EditorStore, kind: DrawnKind, stock: string, down: PointerEvent): void {
  if (down.button !== 0) return;
  const { design } = store.getState().edit;
  const layout = layoutOf(design);
  const finger = down.pointerType === 'touch';
  const pressed = down.target instanceof Element ? down.target.closest('button') : null;
  let box: Box | null = null;
  let snap: Snap = NO_SNAP;
  let begun = false;
  const id = freeId(design, kind);
  const start = touchAt(store, down);

  // A finger that sets off at once scrolls the list; one that rests first lifts the piece out of it.
  const lift = () => {
    lifted = true;
    pressed?.setAttribute('data-lifted', '');
  };
  const resting = finger ? setTimeout(lift, LIFT_MS) : undefined;
  const stop = () => {
    clearTimeout(resting);
    lifted = false;
    pressed?.removeAttribute('data-lifted');
    clearGesture(store);
  };

  const drop = carry(
    store,
    down,
    {
      move: (touch) => {
        if (!begun && !strayed(start.px, touch.px)) return;
        if (finger && !lifted) return drop();
        begun = true;
        if (!isOnCanvas(touch.px)) {
          box = null;
          clearGesture(store);
          return;
        }
        const size = madeSize(kind, stock, design);
        const raw = { x: touch.face.x - size.w / 2, y: touch.face.y - size.h / 2, ...size };
        const state = store.getState();
        snap = touch.free ? NO_SNAP : snapInHand(state, layout, { moving: [{ id, box: raw }], grip: MOVE });
        box = { ...raw, x: raw.x + snap.dx, y: raw.y + snap.dy };
        const made = createItem(design, kind, box, stock);
        const hand = { moving: [{ id, box }], grip: MOVE };
        const edits = [...made.edits, ...ruleEdits(preview(state.edit, made.edits), hand, snap)];
        const text = `${lengthText(design, box.x)} · ${lengthText(design, box.y)}`;
        propose(store, { edits, held: new Set([made.id]), guides: snap.guides, at: touch.px, text });
      },
      end: () => {
        stop();
        if (box) finishDraw(store, kind, box, { snap, grip: MOVE }, stock);
        else if (!begun) {
          const canvas = canvasElement();
          const middle = { x: (canvas?.clientWidth ?? 0) / 2, y: (canvas?.clientHeight ?? 0) / 2 };
          const at = toFace(store.getState().view, middle);
          const size = madeSize(kind, stock, design);
          finishDraw(store, kind, { x: at.x - size.w / 2, y: at.y - size.h / 2, ...size }, null, stock);
        }
      },
      cancel: stop,
    },
    (e) => touchAt(store, e),
  );
}

/** Where a pointer is on the canvas, or would be if that went on beside it. */
function touchAt(store: EditorStore, e: PointerEvent): Touch {
  const px = onCanvas(e);
  const face = toFace(store.getState().view, px);
  return { px, face, shift: e.shiftKey, free: e.altKey, touch: e.pointerType === 'touch' };
}

/** The size that a new part takes by its kind and stock. */
function madeSize(kind: DrawnKind, stock: string, design: Parameters<typeof createItem>[0]) {
  const size = DEFAULT_SIZE[kind];
  const { box } = createItem(design, kind, { x: 0, y: 0, ...size }, stock);
  return { w: box.w, h: box.h };
}
