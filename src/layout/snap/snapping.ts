import type { Face } from '../../bed/face.ts';
import type { Axis, Design, Edge, Rule } from '../../design/schema.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import type { Span } from '../span.ts';

/** A rule of the design that has no id yet. */
export type OfferedRule = Rule extends infer R ? (R extends Rule ? Omit<R, 'id'> : never) : never;

/**
 * What the hand has hold of along one axis: the whole with its size, one edge, both edges (a part being drawn
 * from corner to corner), or nothing.
 */
export type Grip = 'move' | 'low' | 'high' | 'both' | null;

/** Something that may be held to, in its visible bounds. */
export interface Thing {
  readonly id: string;
  readonly box: Box;
  /** The inside of a frame. */
  readonly inner?: Box | undefined;
  /** Of a straight strip: its stock. Strips of one stock are in line by their center lines too. */
  readonly stock?: string | undefined;
}

export interface SnapInput {
  /** The parts in the hand, where the hand has them now. */
  readonly moving: readonly Thing[];
  readonly grip: { readonly x: Grip; readonly y: Grip };
  /**
   * What stays where it is. Members of arrays, as `id[column,row]`, come besides the arrays. Parts that follow
   * the moving ones do not belong here (`followersOf`).
   */
  readonly others: readonly Thing[];
  /** What lies under the moving parts: the id of a part, or `level:` and a level. */
  readonly support: string;
  readonly face: Face;
  /** How near is near: the editor's pixels divided by its zoom. */
  readonly reach: Mm;
  readonly style: Design['measure'];
}

/** What a hand may have meant, as in the ranking. */
export type Reading = 'touch' | 'line' | 'gap' | 'margin' | 'center' | 'distance';

/** A line across the axis, to be drawn. */
export interface Guide {
  readonly from: Point;
  readonly to: Point;
}

/** A dimension, to be drawn with its length. */
export interface Dimension extends Guide {
  readonly length: Mm;
}

/** One thing that an edge, or the part as a whole, may be held to. */
export interface Offer {
  readonly reading: Reading;
  readonly axis: Axis;
  /** What of the moving parts it is about; `mid`: the whole. */
  readonly side: Edge['side'];
  /** Where that comes to lie. */
  readonly at: Mm;
  /** What size the whole then has, where that is not the drawn one. */
  readonly size?: Mm;
  /** From where the hand has it to there. */
  readonly miss: Mm;
  /** Of equally near ones the lowest wins (`PREFERENCE`), then the nearest across. */
  readonly prefer: number;
  readonly far: Mm;
  /** Null: a place only. */
  readonly rule: OfferedRule | null;
  readonly guides: readonly Guide[];
  readonly dimensions: readonly Dimension[];
}

/** A line that something may be held to. */
export interface Line {
  readonly edge: Edge;
  readonly at: Mm;
  readonly prefer: number;
}

/** What lies around the moving parts: the part beneath, a frame, a level, the face. */
export interface Container {
  readonly of: string;
  readonly inner: boolean;
  readonly box: Box;
  readonly span: Span;
  readonly prefer: number;
}

/** Another part, along one axis. */
export interface Neighbor {
  readonly thing: Thing;
  readonly span: Span;
  readonly across: Span;
}

/** Everything that the ranking looks at, along one axis. */
export interface SnapAxis {
  readonly axis: Axis;
  readonly grip: Exclude<Grip, null>;
  readonly ids: readonly string[];
  /** Of all that moves. */
  readonly span: Span;
  readonly across: Span;
  /** The moving parts whose edges are the ends of `span`. */
  readonly lowPart: string;
  readonly highPart: string;
  /** Stock of the one strip in the hand. */
  readonly stock: string | undefined;
  /** From the innermost out. */
  readonly containers: readonly Container[];
  /** Parts that share a stretch across the axis, and do not lie around the moving ones. */
  readonly beside: readonly Neighbor[];
  /** Parts that share none: over or under the moving ones, as seen along the axis. */
  readonly apart: readonly Neighbor[];
  /** How far off the nearest of those is, on either side, that stands before what is farther. */
  readonly nearest: { readonly over: Mm; readonly under: Mm };
  readonly input: SnapInput;
}

/** Of equally near offers, what the part lies on or stands against goes before levels and the face. */
export const PREFERENCE = { support: 0, frame: 1, part: 2, beneath: 3, level: 4, face: 5, aside: 6 } as const;
