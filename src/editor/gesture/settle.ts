import { selectInHand } from '../state/commit.ts';
import type { EditorStore } from '../state/store.ts';

/** A hand that has not moved for this long rests, milliseconds: what it took may be read now. Common practice, no source. */
const REST_MS = 200;

/**
 * What a press takes is outlined at once, but the panes show it only when the hand rests or lets go: a press that goes
 * on as a drag would else lay out a page of fields between the hand and its first step, and make them follow it, while
 * nobody reads them.
 */
export class Settle {
  readonly #store: EditorStore;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #moved = 0;

  constructor(store: EditorStore) {
    this.#store = store;
  }

  /** The press selects what it found. */
  take(selection: readonly string[]): void {
    selectInHand(this.#store, selection);
    this.#moved = performance.now();
    this.#wait(REST_MS);
  }

  moved(): void {
    if (this.#timer !== undefined) this.#moved = performance.now();
  }

  /** The hand let go, or something else is done than to drag. */
  settle(): void {
    if (this.#timer === undefined) return;
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#store.setState({ pressed: null });
  }

  /** One timer for the whole drag: it is set again only when it has run out. */
  #wait(ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      const left = this.#moved + REST_MS - performance.now();
      if (left > 0) this.#wait(left);
      else this.settle();
    }, ms);
  }
}
