import type { Drawing } from '../../drawing/drawing.ts';
import type { Box } from '../../geometry/shape.ts';

/** A full-size drawing that is to be tiled. */
export interface Pattern {
  readonly for: string;
  readonly title: string;
  readonly note?: string | undefined;
  readonly drawing: Drawing;
  /** Letters to keep whole where the person asks for it. */
  readonly letters: readonly Box[];
  /** What no trim line should run through, asked for or not. */
  readonly keep?: readonly Box[] | undefined;
  /** Layers whose lines are worth no page of their own. */
  readonly besides?: readonly string[] | undefined;
}
