import type { Axis } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { roomAround } from '../../layout/snap/room.ts';
import { AXES, sizeOf, startOf, withSpan } from '../../layout/span.ts';
import { createItem, madeAt, type Owned, stockFor, usualSize } from '../edit/create.ts';
import { isOnCanvas, onCanvas } from '../state/place.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, toFace } from '../state/store.ts';
import { type DrawTool, isBuilt, isDrawn, isOwn } from '../state/tools.ts';
import { lengthText } from '../words/text.ts';
import { type Drawn, finishMade, handOf, holding } from './draw.ts';
import { clearGesture, strayed, type Touch } from './gesture.ts';
import { carry } from './held.ts';
import { asInHand, type Ground, groundOf, type InHand, snapInHand } from './snapping.ts';

/** A finger that has rested this long on a piece of stock lifts it out of the list. */
const LIFT_MS = 300;

/**
 * Drags a piece of stock, or a building part, from its list onto the face; a building part fits into the room that it
 * is let go in. It begins outside of the drawing, so it follows the pointer through the window; released beside the
 * drawing it leaves no trace. A press that goes nowhere takes it in hand, to be drawn with.
 */
export function startPlacing(
  store: EditorStore,
  kind: DrawTool,
  stock: string | undefined,
  down: PointerEvent,
): void {
  if (down.button !== 0) return;
  const { edit, owned } = store.getState();
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
        const { box, grip } = placeFor(ground, { kind, stock, owned }, touch);
        const item = createItem(design, kind, box, owned, stock);
        const hand = { ...handOf(design, item, 'move'), grip };
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
        else if (!begun) take(store, kind, stock);
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

/** Takes a stock or a building part in hand: what is drawn next is made of it. Taken once more, it is put down. */
function take(store: EditorStore, kind: DrawTool, stock: string | undefined): void {
  const { edit, tool, stock: before } = store.getState();
  if (stock === undefined) store.setState({ tool: tool === kind ? 'select' : kind, sheetOpen: false });
  else if (before === stock) store.setState({ stock: null, tool: 'select' });
  else {
    const fits = isDrawn(tool) && stockFor(edit.design, tool, stock) !== undefined;
    store.setState({ stock, tool: fits ? tool : kind, sheetOpen: false });
  }
}

/** A room is filled up to this share of the usual size, and no smaller one than that. Common practice, no source. */
const ROOM = { least: 1 / 4, most: 2 };

/**
 * Where something new lies under the pointer, and how it is held: of its usual size, with its middle there; a building
 * part fills the room there along each axis that it is about as large as.
 */
function placeFor(
  ground: Ground,
  {
    kind,
    stock,
    owned,
  }: { readonly kind: DrawTool; readonly stock: string | undefined; readonly owned: Owned },
  { face: at, free }: Touch,
): { readonly box: Box; readonly grip: InHand['grip'] } {
  const { design } = ground.shown;
  const size = usualSize(kind, owned);
  const { box: usual, keeps } = createItem(design, kind, { x: 0, y: 0, ...size }, owned, stock);
  let box: Box = { ...usual, x: at.x - usual.w / 2, y: at.y - usual.h / 2 };
  const grip: Record<Axis, 'move' | 'both'> = { x: 'move', y: 'move' };
  if (free || !(isBuilt(kind) || isOwn(kind))) return { box, grip };
  const room = roomAround(at, { ...ground.around(design, ''), face: ground.shown.face });
  for (const axis of AXES) {
    const share = sizeOf(room, axis) / sizeOf(usual, axis);
    if (keeps?.[axis] || share < ROOM.least || share > ROOM.most) continue;
    box = withSpan(box, axis, startOf(room, axis), sizeOf(room, axis));
    grip[axis] = 'both';
  }
  return { box, grip };
}
