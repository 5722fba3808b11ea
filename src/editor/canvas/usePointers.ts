import { type PointerEvent, type RefObject, useEffect, useMemo } from 'react';
import { isLettered } from '../../design/made.ts';
import type { Point } from '../../geometry/shape.ts';
import { boxesOf, movableAround } from '../drawing/boxes.ts';
import { handleAt, handlesAround, handlesOf } from '../drawing/handles.ts';
import { partAt, pickAt } from '../drawing/pick.ts';
import { chooseMemberAt, chosenMember } from '../edit/members.ts';
import { chooseOpeningAt, chosenOpening } from '../edit/openings.ts';
import { openPartMenu } from '../edit/partMenu.ts';
import { startBend, startBow, startCorner } from '../gesture/corner.ts';
import { startDraw } from '../gesture/draw.ts';
import { startFrameSelect } from '../gesture/frameSelect.ts';
import { type Gesture, strayed, type Touch } from '../gesture/gesture.ts';
import { Held } from '../gesture/held.ts';
import { startMove } from '../gesture/move.ts';
import { startDrawOpening, startOpening } from '../gesture/opening.ts';
import { startPan } from '../gesture/pan.ts';
import { endPath, hoverPath, startPathCorner } from '../gesture/path.ts';
import { startPhoto } from '../gesture/photo.ts';
import { startPinch } from '../gesture/pinch.ts';
import { startResize } from '../gesture/resize.ts';
import { startResizeMany } from '../gesture/resizeMany.ts';
import { Settle } from '../gesture/settle.ts';
import { startTurn } from '../gesture/turn.ts';
import { select } from '../state/commit.ts';
import { type EditorStore, pixels, toFace } from '../state/store.ts';
import { isDrawn } from '../state/tools.ts';
import { zoomedAt } from '../state/zoom.ts';

/** Picking reach and handle reach in pixels, for a mouse and for a finger. */
const REACH = { mouse: 5, finger: 14 } as const;
const HANDLE_REACH = { mouse: 9, finger: 22 } as const;

/** A finger rests when it has stayed this long. */
const REST_MS = 550;

/**
 * Turns presses on the canvas into gestures: one runs at a time, by mouse, pen or finger; a second finger
 * turns it into a pinch.
 */
export function usePointers(
  store: EditorStore,
  holder: RefObject<HTMLDivElement | null>,
  space: RefObject<boolean>,
) {
  const hand = useMemo(() => new Hand(store), [store]);

  useEffect(() => {
    const onKey = (e: KeyboardEvent) => hand.key(e);
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  }, [hand]);

  // React listens to wheel passively; zooming has to keep the page from scrolling.
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const onWheel = (e: WheelEvent) => {
      e.preventDefault();
      const px = pointOf(e, element);
      const { view } = store.getState();
      if (e.ctrlKey || !e.shiftKey) {
        const lines = e.deltaMode === 1 ? 16 : 1;
        store.setState({ fitted: false, view: zoomedAt(view, px, Math.exp(-e.deltaY * lines * 0.0016)) });
      } else {
        store.setState({ fitted: false, view: { ...view, x: view.x - (e.deltaX || e.deltaY), y: view.y } });
      }
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [holder, store]);

  const touchOf = (e: PointerEvent<HTMLDivElement> | React.MouseEvent<HTMLDivElement>): Touch => {
    const px = pointOf(e, e.currentTarget);
    return {
      px,
      face: toFace(store.getState().view, px),
      shift: e.shiftKey,
      free: e.altKey,
      touch: 'pointerType' in e && e.pointerType === 'touch',
    };
  };

  return {
    onPointerDown: (e: PointerEvent<HTMLDivElement>) => {
      if (e.target instanceof Element && e.target.closest('button, input, textarea, select')) return;
      // A field keeps what was typed into it when it is left; the press may take the field away.
      e.currentTarget.focus({ preventScroll: true });
      e.currentTarget.setPointerCapture(e.pointerId);
      hand.press(e.pointerId, e.button, touchOf(e), clientOf(e), space.current === true);
    },
    onPointerMove: (e: PointerEvent<HTMLDivElement>) => hand.move(e.pointerId, touchOf(e)),
    onPointerUp: (e: PointerEvent<HTMLDivElement>) => hand.release(e.pointerId, touchOf(e)),
    onPointerCancel: (e: PointerEvent<HTMLDivElement>) => hand.drop(e.pointerId),
    // After a release nothing is left to drop; a pointer whose release went elsewhere must not count as a finger.
    onLostPointerCapture: (e: PointerEvent<HTMLDivElement>) => hand.drop(e.pointerId),
    onContextMenu: (e: React.MouseEvent<HTMLDivElement>) => {
      e.preventDefault();
      // Fingers bring it too, at times by mere taps; one that rests has opened the menu already.
      if (e.button === 2 || e.ctrlKey) hand.menu(touchOf(e), clientOf(e));
    },
    onKeyDown: (e: React.KeyboardEvent<HTMLDivElement>) => {
      const asks = e.key === 'ContextMenu' || (e.key === 'F10' && e.shiftKey);
      if (!asks || store.getState().edit.selection.length === 0) return;
      e.preventDefault();
      openPartMenu(store, middleOf(e.currentTarget), 'keys');
    },
    onDoubleClick: (e: React.MouseEvent<HTMLDivElement>) => {
      if (e.target instanceof Element && e.target.closest('button, input, textarea, select')) return;
      hand.open(pointOf(e, e.currentTarget));
    },
  };
}

function middleOf(element: Element): Point {
  const rect = element.getBoundingClientRect();
  return { x: rect.left + rect.width / 2, y: rect.top + rect.height / 2 };
}

const clientOf = (e: { clientX: number; clientY: number }): Point => ({ x: e.clientX, y: e.clientY });

function pointOf(e: { clientX: number; clientY: number }, element: Element): Point {
  const rect = element.getBoundingClientRect();
  return { x: e.clientX - rect.left, y: e.clientY - rect.top };
}

/** The pointers that are down, and the gesture they make. */
class Hand {
  readonly #store: EditorStore;
  readonly #down = new Map<number, Point>();
  readonly #settle: Settle;
  #held: Held | null = null;
  #pinch: ReturnType<typeof startPinch> | null = null;
  #resting: ReturnType<typeof setTimeout> | undefined;
  #pressed: Point = { x: 0, y: 0 };

  constructor(store: EditorStore) {
    this.#store = store;
    this.#settle = new Settle(store);
  }

  press(pointer: number, button: number, touch: Touch, client: Point, space: boolean): void {
    this.#down.set(pointer, touch.px);
    if (this.#down.size === 2) {
      clearTimeout(this.#resting);
      this.#cancel();
      const [a, b] = [...this.#down.values()];
      if (a && b) this.#pinch = startPinch(this.#store, a, b);
      return;
    }
    if (this.#down.size > 2) return;
    if (touch.touch) this.#wait(touch, client);
    this.#store.setState({ field: null });
    const pans = button === 1 || space || this.#store.getState().tool === 'hand';
    const gesture = pans ? startPan(this.#store, touch) : button === 0 ? this.#begin(touch) : null;
    this.#held = gesture && new Held(this.#store, gesture, touch);
  }

  #cancel(): void {
    this.#settle.settle();
    this.#held?.cancel();
    this.#held = null;
  }

  /** A finger that rests on a part opens its menu. */
  #wait(touch: Touch, client: Point): void {
    this.#pressed = touch.px;
    const before = this.#store.getState().edit.selection;
    clearTimeout(this.#resting);
    this.#resting = setTimeout(() => {
      this.#cancel();
      this.menu(touch, client, before);
    }, REST_MS);
  }

  /** Opens the menu of the part under the pointer, which is selected if it was not. */
  menu(touch: Touch, client: Point, before = this.#store.getState().edit.selection): void {
    const store = this.#store;
    const { edit, view, tool } = store.getState();
    const reach = REACH[touch.touch ? 'finger' : 'mouse'];
    const found = pickAt(edit.design, edit.shown.layout, touch.face, pixels(view, reach));
    if (!found || tool !== 'select') return;
    const isNew = !before.includes(found);
    select(store, isNew ? [found] : before);
    const too = touch.touch && isNew && before.length > 0 ? before : null;
    openPartMenu(store, client, 'pointer', too);
  }

  #begin(touch: Touch): Gesture | null {
    const store = this.#store;
    const state = store.getState();
    if (state.photo?.shown && state.photoMode !== 'rest') return startPhoto(store, touch);
    if (state.tool === 'path') return startPathCorner(store);
    if (state.tool === 'opening') return startDrawOpening(store, touch);
    if (isDrawn(state.tool)) return startDraw(store, touch, state.tool);
    const { design, selection, shown } = state.edit;
    const { layout } = shown;
    const kind = touch.touch ? 'finger' : 'mouse';
    const [only] = selection;
    const box = selection.length === 1 && only ? boxesOf(design, layout, [only])[0] : undefined;
    const around = movableAround(design, layout, selection);
    if (around) {
      const handle = handleAt(handlesAround(around, state.view), touch.px, HANDLE_REACH[kind]);
      if (handle?.act.kind === 'resize') return startResizeMany(store, touch, handle.act.pull);
    } else if (only && box) {
      const handle = handleAt(
        handlesOf(design, only, box, state.view, state.corner, state.opening),
        touch.px,
        HANDLE_REACH[kind],
      );
      if (handle?.act.kind === 'resize')
        return chosenOpening(state)
          ? startOpening(store, touch, handle.act.pull)
          : startResize(store, touch, handle.act.pull);
      if (handle?.act.kind === 'corner') return startCorner(store, touch, handle.act.index, false);
      if (handle?.act.kind === 'middle') return startCorner(store, touch, handle.act.index, true);
      if (handle?.act.kind === 'bow') return startBow(store, touch, handle.act.index);
      if (handle?.act.kind === 'bend') return startBend(store, touch, handle.act.index, handle.act.which);
      if (state.corner !== null) store.setState({ corner: null });
      if (handle?.act.kind === 'turn') return startTurn(store, touch);
      if (!touch.shift && chooseOpeningAt(store, touch.face)) return startOpening(store, touch, null);
      if (state.opening !== null) store.setState({ opening: null });
    }
    if (!touch.shift && chosenMember(state)?.slot && chooseMemberAt(store, touch.face))
      return startMove(store, touch);
    // A part that was taken out of its group by a double click stays in hand until something else is pressed.
    if (!touch.shift && only && box && partAt(layout, touch.face) === only) return startMove(store, touch);
    const found = pickAt(design, layout, touch.face, pixels(state.view, REACH[kind]));
    if (!found) return touch.touch ? startPan(store, touch) : startFrameSelect(store, touch);
    if (touch.shift) {
      select(
        store,
        selection.includes(found) ? selection.filter((id) => id !== found) : [...selection, found],
      );
      return null;
    }
    if (!selection.includes(found)) this.#settle.take([found]);
    return startMove(store, touch);
  }

  move(pointer: number, touch: Touch): void {
    if (!this.#down.has(pointer)) {
      if (this.#store.getState().tool === 'path' && !touch.touch) hoverPath(this.#store, touch);
      return;
    }
    this.#down.set(pointer, touch.px);
    this.#settle.moved();
    if (strayed(this.#pressed, touch.px)) clearTimeout(this.#resting);
    if (this.#pinch) {
      const [a, b] = [...this.#down.values()];
      if (a && b) this.#pinch(a, b);
    } else this.#held?.move(touch);
  }

  release(pointer: number, touch: Touch): void {
    clearTimeout(this.#resting);
    this.#down.delete(pointer);
    if (this.#pinch) {
      if (this.#down.size < 2) this.#pinch = null;
      return;
    }
    this.#held?.end(touch);
    this.#held = null;
    this.#settle.settle();
  }

  drop(pointer: number): void {
    if (!this.#down.delete(pointer)) return;
    clearTimeout(this.#resting);
    this.#pinch = null;
    this.#cancel();
  }

  /** Keys for what is dragged just now. */
  key(e: KeyboardEvent): void {
    this.#settle.settle();
    if (this.#held?.key(e)) this.#held = null;
  }

  /** A double click: into a group, to a member of an array, or into the lettering of a sign. */
  open(px: Point): void {
    const store = this.#store;
    const { view, edit, tool } = store.getState();
    if (tool === 'path') {
      endPath(store, false);
      return;
    }
    if (chooseMemberAt(store, toFace(view, px))) return;
    const id = partAt(edit.shown.layout, toFace(view, px));
    const part = edit.design.parts.find((p) => p.id === id);
    if (!part) return;
    select(store, [part.id]);
    if (isLettered(part)) store.setState({ field: { kind: 'lettering', part: part.id } });
  }
}
