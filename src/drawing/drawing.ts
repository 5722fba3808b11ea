import type { Path, Point } from '../geometry/shape.ts';
import type { Deg, Mm } from '../measure/units.ts';

/** `#rrggbb`. */
export type Color = string;

/** White laid over what is beneath, as far as its alpha goes at each share of the way between two points. */
export interface Fade {
  readonly from: Point;
  readonly to: Point;
  readonly stops: readonly { readonly at: number; readonly alpha: number }[];
}

export interface PathItem {
  readonly kind: 'path';
  readonly path: Path;
  readonly fill?: Color | undefined;
  readonly fillOpacity?: number | undefined;
  /** In place of a color. */
  readonly fade?: Fade | undefined;
  readonly fillRule?: 'nonzero' | 'evenodd' | undefined;
  readonly stroke?: Color | undefined;
  /** Line weight. */
  readonly width?: Mm | undefined;
  readonly dash?: readonly Mm[] | undefined;
  readonly cap?: 'butt' | 'round' | undefined;
}

export interface TextItem {
  readonly kind: 'text';
  /** On the baseline, at the anchor. */
  readonly at: Point;
  readonly text: string;
  /** Em size. */
  readonly size: Mm;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Counterclockwise about `at`. */
  readonly angle?: Deg | undefined;
  readonly bold?: boolean | undefined;
  readonly color: Color;
  /** Rank as a heading, for reading aloud. */
  readonly heading?: 1 | 2 | undefined;
  /** Formats with links lead from here to the text whose `place` this is. */
  readonly leadsTo?: string | undefined;
  /** Name of the place that this text marks, for those that lead here. */
  readonly place?: string | undefined;
}

/** A picture of pixels as its file has it; outputs take it over as it is. */
export interface Raster {
  readonly type: 'image/png' | 'image/jpeg';
  /** In pixels. */
  readonly width: number;
  readonly height: number;
  /** The file in base64 (RFC 4648, section 4). */
  readonly data: string;
}

export interface ImageItem {
  readonly kind: 'image';
  readonly raster: Raster;
  /** Where three corners of the picture lie: lower left, lower right and upper left. The fourth follows. */
  readonly corners: readonly [Point, Point, Point];
}

export interface GroupItem {
  readonly kind: 'group';
  /** Layer name, kept by the formats that have layers. */
  readonly layer?: string | undefined;
  /** Applied to children: scale first, then turn (counterclockwise), then move. */
  readonly scale?: { readonly x: number; readonly y: number } | undefined;
  readonly turn?: Deg | undefined;
  readonly move?: Point | undefined;
  /** In the group's own coordinates. */
  readonly clip?: Path | undefined;
  readonly items: readonly DrawItem[];
}

export type DrawItem = PathItem | TextItem | ImageItem | GroupItem;

/** A drawing in millimeters, y up, origin at its lower left; outputs decide nothing, they draw this. */
export interface Drawing {
  readonly width: Mm;
  readonly height: Mm;
  readonly title: string;
  readonly items: readonly DrawItem[];
}
