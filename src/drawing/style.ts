import { inches, type Mm } from '../measure/units.ts';
import type { Color } from './drawing.ts';

/**
 * Line weights on paper. Each step is about the root of two thicker than the one before: the series of
 * ISO 128-20, from memory.
 */
export const WEIGHT = {
  /** Hatching, grids, tints of a table. */
  hair: 0.13,
  /** Dimensions, extensions, leaders, center lines. */
  thin: 0.18,
  /** Outlines seen behind others, table rules. */
  fine: 0.25,
  /** Outlines of parts. */
  middle: 0.35,
  /** Outline of the whole, cut lines, borders. */
  bold: 0.5,
} as const satisfies Record<string, Mm>;

/** Typographic points as PDF counts them, 72 to the inch. */
const points = (count: number): Mm => inches(count / 72);

/** Dash patterns, dash and gap in turn; lengths from memory of the same standard, shortened for letter paper. */
export const DASH = {
  /** Hidden edges. */
  hidden: [2, 1],
  /** Center lines. */
  center: [6, 1.2, 1.2, 1.2],
  /** Where to fold, trim or join. */
  trim: [4, 2],
  dotted: [0.35, 1.2],
} as const satisfies Record<string, readonly Mm[]>;

/** Em sizes of text on paper: 8 points at least, tables in 9 and figures for the saw in 12. */
export const TEXT = {
  note: points(8),
  small: points(9),
  body: points(9.5),
  large: points(11.5),
  figure: points(12),
  heading: 5,
  title: 9,
} as const satisfies Record<string, Mm>;
/** Smallest text that is still read, less what rounding takes. */
export const READ: Mm = TEXT.note - 1e-6;

/** The same on full-size patterns, where a name stands in what room the lines leave. */
export const PATTERN_TEXT = {
  note: 2.1,
  small: 2.5,
  body: 3,
  large: 3.8,
  heading: 5,
  title: 9,
} as const satisfies Record<string, Mm>;

/** Drawing colors: all of them stay apart when printed in gray. */
export const INK = {
  line: '#1c2126',
  soft: '#5c656e',
  faint: '#b4bbc1',
  tint: '#eef0f2',
  accent: '#a3341f',
  paper: '#ffffff',
} as const satisfies Record<string, Color>;

/** Dimension lines. */
export const DIMENSION = {
  text: points(9),
  /** Length of the oblique tick at the ends. */
  tick: 1.6,
  /** Gap between the object and the start of an extension line. */
  gap: 1,
  /** How far an extension line runs past the dimension line. */
  past: 1.2,
  /** From one row of dimensions to the next. */
  row: 6,
} as const satisfies Record<string, Mm>;
