import type { Check } from '../check/check.ts';
import type { Drawing } from '../drawing/drawing.ts';
import type { Box } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';

/** One sheet of paper to print. */
export interface PatternPage {
  /** Its number among the pages of its pattern, by rows from the top and from the left: `2`. */
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** What the page is answerable for, between its trim lines, in the pattern's coordinates. */
  readonly cell: Box;
  /** What the page shows, overlap and all. */
  readonly window: Box;
  readonly drawing: Drawing;
}

/** A full-size drawing tiled on paper. */
export interface PatternSet {
  /** What it is for: a sign's part id, `face`, a part's id, or `story-sticks`, on several pages `story-sticks-1` and so on. */
  readonly for: string;
  readonly title: string;
  /** How it is used; pages say as much of it as they have room for. */
  readonly note?: string | undefined;
  readonly paper: string;
  readonly rows: number;
  readonly columns: number;
  readonly turned: boolean;
  /** Blank pages left out. */
  readonly pages: readonly PatternPage[];
  /** Size of the whole pattern. */
  readonly width: Mm;
  readonly height: Mm;
}

export interface PatternPlan {
  readonly sets: readonly PatternSet[];
  readonly checks: readonly Check[];
}

/** What the ruler measured on the test page, over what it should be; 1 is true. Kept on the device. */
export interface PrinterCorrection {
  readonly x: number;
  readonly y: number;
}
