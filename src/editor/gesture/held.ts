import { parseMeasure } from '../../measure/parse.ts';
import type { EditorStore } from '../state/store.ts';
import type { Gesture, Touch } from './gesture.ts';

/** What may be typed into a measure while something is dragged. */
const OF_A_MEASURE = /^[0-9./'" ½¼¾+\-*()a-z]$/i;

/**
 * A gesture while it runs: the one way in which pointers and keys reach one, wherever its handle stands. Nothing of
 * it waits for the screen, so however fast press, moves and release follow each other, none is lost.
 */
export class Held {
  readonly #store: EditorStore;
  readonly #gesture: Gesture;
  #last: Touch;
  #typed = '';

  constructor(store: EditorStore, gesture: Gesture, start: Touch) {
    this.#store = store;
    this.#gesture = gesture;
    this.#last = start;
  }

  move(touch: Touch): void {
    this.#last = touch;
    if (this.#typed === '') this.#gesture.move(touch);
  }

  /** Let go at a place that no move told of, it is carried there first. */
  end(touch: Touch): void {
    const { px } = this.#last;
    if (px.x !== touch.px.x || px.y !== touch.px.y) this.move(touch);
    this.#gesture.end(touch);
  }

  cancel(): void {
    this.#gesture.cancel();
  }

  /**
   * Escape leaves no trace of the gesture; typed digits take the place of the pointer, and Enter ends it with them.
   * Takes the key where it means something; true when the gesture is over by it.
   */
  key(e: KeyboardEvent): boolean {
    const over = this.#over(e);
    if (over === null) return false;
    e.preventDefault();
    e.stopPropagation();
    return over;
  }

  #over(e: KeyboardEvent): boolean | null {
    if (e.key === 'Escape') {
      this.cancel();
      return true;
    }
    if (e.key === 'Enter' && this.#typed !== '') {
      this.#gesture.end(this.#last);
      return true;
    }
    if (!this.#gesture.typed || e.ctrlKey || e.metaKey) return null;
    if (e.key !== 'Backspace' && !OF_A_MEASURE.test(e.key)) return null;
    this.#typed = e.key === 'Backspace' ? this.#typed.slice(0, -1) : this.#typed + e.key;
    const { edit, hud: before } = this.#store.getState();
    const read = parseMeasure(this.#typed, edit.design.measure.unit);
    if (read.ok) this.#gesture.typed(read.value);
    const hud = this.#store.getState().hud ?? before;
    if (hud) this.#store.setState({ hud: { ...hud, typed: this.#typed } });
    return false;
  }
}

/**
 * Carries a gesture that began on a handle beside the drawing, through the window, from its press to its release.
 * Gives what drops it.
 */
export function carry(
  store: EditorStore,
  down: PointerEvent,
  gesture: Gesture,
  touchOf: (e: PointerEvent) => Touch,
): () => void {
  const held = new Held(store, gesture, touchOf(down));
  const over = new AbortController();
  const ended = () => over.abort();
  const drop = () => {
    if (over.signal.aborted) return;
    ended();
    held.cancel();
  };
  const on = <K extends keyof WindowEventMap>(
    type: K,
    act: (e: WindowEventMap[K]) => void,
    capture = false,
  ) => window.addEventListener(type, act, { signal: over.signal, capture });
  const mine = (act: (e: PointerEvent) => void) => (e: PointerEvent) => {
    if (e.pointerId === down.pointerId) act(e);
  };
  on(
    'pointermove',
    mine((e) => held.move(touchOf(e))),
  );
  on(
    'pointerup',
    mine((e) => {
      ended();
      held.end(touchOf(e));
    }),
  );
  on('pointercancel', mine(drop));
  on(
    'keydown',
    (e) => {
      if (held.key(e)) ended();
    },
    true,
  );
  return drop;
}
