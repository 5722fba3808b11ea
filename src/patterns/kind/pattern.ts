import type { Drawing } from '../../drawing/drawing.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

/** Beside what shares a page, or below it: what the page's measuring square takes up. */
export const SQUARE: Mm = 58;

/** A full-size drawing that is to be tiled. */
export interface Pattern {
  readonly for: string;
  readonly title: string;
  /** A second line for every page, such as how to use it. */
  readonly note?: string | undefined;
  /** Of a pattern on one page, which page it is of how many that belong together. */
  readonly numbered?: { readonly page: number; readonly of: number } | undefined;
  readonly drawing: Drawing;
  /** Letters to keep whole where the person asks for it. */
  readonly letters: readonly Box[];
  /** What no trim line should run through, asked for or not. */
  readonly keep?: readonly Box[] | undefined;
  /** Layers whose lines are worth no page of their own. */
  readonly besides?: readonly string[] | undefined;
}
