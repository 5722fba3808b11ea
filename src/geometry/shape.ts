import type { Mm } from '../measure/units.ts';

/** A point in millimeters; x right, y up. */
export interface Point {
  readonly x: Mm;
  readonly y: Mm;
}

/** An axis-aligned rectangle by its lower left corner and its size. */
export interface Box {
  readonly x: Mm;
  readonly y: Mm;
  readonly w: Mm;
  readonly h: Mm;
}

/** A closed polygon, first point not repeated. */
export type Ring = readonly Point[];

/** Four corners: lower left, lower right, upper right, upper left. */
export type Quad = readonly [Point, Point, Point, Point];

/** One connected area: an outer ring (counterclockwise) and its holes (clockwise). */
export interface Polygon {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
}

/** Any area of the plane: polygons that do not overlap each other. */
export type Region = readonly Polygon[];

/** Drawing commands with absolute coordinates; only cubics, so that every output can draw them. */
export type PathCommand =
  | { readonly op: 'M'; readonly x: Mm; readonly y: Mm }
  | { readonly op: 'L'; readonly x: Mm; readonly y: Mm }
  | {
      readonly op: 'C';
      readonly x1: Mm;
      readonly y1: Mm;
      readonly x2: Mm;
      readonly y2: Mm;
      readonly x: Mm;
      readonly y: Mm;
    }
  | { readonly op: 'Z' };

/** A path of one or more closed or open contours. */
export type Path = readonly PathCommand[];
