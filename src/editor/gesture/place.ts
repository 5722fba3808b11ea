import { boxIn } from '../../layout/boxIn.ts';
import { createItem, madeAt, stockFor, usualSize } from '../edit/create.ts';
import { isOnCanvas, onCanvas } from '../state/place.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, toFace } from '../state/store.ts';
import { type DrawnKind, isDrawn } from '../state/tools.ts';
import { lengthText } from '../words/text.ts';
import { type Drawn, finishMade, handOf, holding } from './draw.ts';
import { clearGesture, strayed, type Touch } from './gesture.ts';
import { carry } from './held.ts';
import { asInHand, groundOf, snapInHand } from './snapping.ts';

/** A finger that has rested this long on a piece of stock lifts it out of the list. */
const LIFT_MS = 300;

/**
 * Drags a piece of stock from the palette onto the face. It begins outside of the drawing, so it follows
 * the pointer through the window; released beside the drawing it leaves no trace. A press that goes
 * nowhere takes the stock in hand, to be drawn with.
 */
export function startPlacing(store: EditorStore, kind: DrawnKind, stock: string, down: PointerEvent): void {
  if (down.button !== 0) return;
  const { edit } = store.getState();
  const { design } = edit;
  const ground = groundOf(edit.shown);
  const finger = down.pointerType === 'touch';
  const pressed = down.target instanceof Element ? down.target.closest('button') : null;
  let drawn: Drawn | null = null;
  let begun = false;
  const start = touchAt(store, down);

  // A finger that sets off at once scrolls the list; one that rests first lifts the piece out of it.
  const lift = () => {
    store.setState({ lifted: true });
    pressed?.setAttribute('data-lifted', '');
  };
  const resting = finger ? setTimeout(lift, LIFT_MS) : undefined;
  const stop = () => {
    clearTimeout(resting);
    store.setState({ lifted: false });
    pressed?.removeAttribute('data-lifted');
    clearGesture(store);
  };

  const drop = carry(
    store,
    down,
    {
      move: (touch) => {
        if (!begun && !strayed(start.px, touch.px)) return;
        if (finger && !store.getState().lifted) return drop();
        begun = true;
        if (!isOnCanvas(store.getState().canvas, touch.px)) {
          drawn = null;
          clearGesture(store);
          return;
        }
        const size = madeSize(kind, stock, design);
        const raw = { x: touch.face.x - size.w / 2, y: touch.face.y - size.h / 2, ...size };
        const item = createItem(design, kind, raw, stock);
        const hand = handOf(design, item, 'move');
        const state = store.getState();
        const snap = touch.free ? asInHand(hand) : snapInHand(state, design, ground, hand);
        const made = madeAt(item, boxIn(snap.boxes, item));
        drawn = { made, snap, hand };
        const text = `${lengthText(design, made.box.x)} · ${lengthText(design, made.box.y)}`;
        const { shown } = holding(state, drawn);
        propose(store, { shown, guides: snap.guides, at: touch.px, text });
      },
      end: () => {
        stop();
        if (drawn) finishMade(store, drawn);
        else if (!begun) takeStock(store, kind, stock);
      },
      cancel: stop,
    },
    (e) => touchAt(store, e),
  );
}

/** Where a pointer is on the canvas, or would be if that went on beside it. */
function touchAt(store: EditorStore, e: PointerEvent): Touch {
  const { canvas, view } = store.getState();
  const px = onCanvas(canvas, e);
  const face = toFace(view, px);
  return { px, face, shift: e.shiftKey, free: e.altKey, touch: e.pointerType === 'touch' };
}

/** Takes a stock in hand: what is drawn next is made of it. Taken once more, it is put down. */
function takeStock(store: EditorStore, kind: DrawnKind, stock: string): void {
  const { edit, tool, stock: before } = store.getState();
  if (before === stock) store.setState({ stock: null, tool: 'select' });
  else {
    const fits = isDrawn(tool) && stockFor(edit.design, tool, stock) !== undefined;
    store.setState({ stock, tool: fits ? tool : kind, sheetOpen: false });
  }
}

/** The size that a new part takes by its kind and stock. */
function madeSize(kind: DrawnKind, stock: string, design: Parameters<typeof createItem>[0]) {
  const size = usualSize(kind);
  const { box } = createItem(design, kind, { x: 0, y: 0, ...size }, stock);
  return { w: box.w, h: box.h };
}
