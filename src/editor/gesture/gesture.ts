import type { Point } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import type { EditorStore } from '../state/store.ts';

/** Where the pointer is and which keys are down. */
export interface Touch {
  /** On the canvas, pixels from its upper left. */
  readonly px: Point;
  /** On the face, millimeters. */
  readonly face: Point;
  readonly shift: boolean;
  /** Place freely: no snapping, and rules that hold the part let go. */
  readonly free: boolean;
  readonly touch: boolean;
}

/** One thing done by hand from press to release. It proposes while it runs and commits once, at its end. */
export interface Gesture {
  readonly move: (touch: Touch) => void;
  readonly end: (touch: Touch) => void;
  readonly cancel: () => void;
  /** A measure was typed while the gesture ran: it takes the place of the pointer. */
  readonly typed?: (mm: Mm) => void;
}

/** Takes every trace of a gesture off the screen. */
export function clearGesture(store: EditorStore): void {
  store.setState({ provisional: null, frame: null, hud: null });
}

/** A press that moved less than this is a click, in pixels. */
const CLICK_SLOP = 4;

export const strayed = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y) > CLICK_SLOP;
