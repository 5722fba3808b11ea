import type { Face } from '../../bed/face.ts';
import type { Axis, Design, Edge, Rule } from '../../design/schema.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import type { Span } from '../span.ts';

/** A rule of the design that has no id yet. */
export type OfferedRule = Rule extends infer R ? (R extends Rule ? Omit<R, 'id'> : never) : never;

/** What the hand has hold of along one axis: the whole, one edge, or nothing. */
export type Grip = 'move' | 'low' | 'high' | null;

export interface SnapInput {
  /** The parts in the hand, where the hand has them now. */
  readonly moving: readonly { readonly id: string; readonly box: Box }[];
  readonly handle: { readonly x: Grip; readonly y: Grip };
  /**
   * What may be snapped to, in its visible bounds; `inner`: the inside of a frame. Members of arrays, as
   * `id[column,row]`, come besides the arrays. Parts that follow the moving ones do not belong here
   * (`followersOf`).
   */
  readonly others: readonly { readonly id: string; readonly box: Box; readonly inner?: Box | undefined }[];
  readonly face: Face;
  /** How near is near: the editor's pixels divided by its zoom. */
  readonly tolerance: Mm;
  readonly style: Design['measure'];
  /** Widths of strips that room may be left for. */
  readonly stockWidths: readonly Mm[];
}

export type SnapKind = 'edge' | 'center' | 'gap' | 'division' | 'reveal' | 'stock' | 'fraction';

/** A line across the axis, to be drawn. */
export interface Guide {
  readonly from: Point;
  readonly to: Point;
}

/** A dimension, to be drawn with its length. */
export interface Dimension extends Guide {
  readonly length: Mm;
}

export interface SnapCandidate {
  readonly kind: SnapKind;
  readonly axis: Axis;
  /** To be added to the place (move) or to the gripped edge. */
  readonly delta: Mm;
  /** What releasing here would hold; null: a place only. */
  readonly rule: OfferedRule | null;
  readonly guides: readonly Guide[];
  readonly dimensions: readonly Dimension[];
}

/** A line that edges snap to. */
export interface Target {
  readonly edge: Edge;
  readonly at: Mm;
  /** Where along the line the thing is. */
  readonly across: Span;
}

/** Something that takes up room along the axis. */
export interface Neighbor {
  readonly id: string;
  /** A member of an array: it can be measured from, but its place is the array's to say. */
  readonly member: boolean;
  readonly span: Span;
  readonly across: Span;
}

/** Everything that a kind of snapping looks at, along one axis. */
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
  /** Of face and levels all, of other things those within reach. */
  readonly targets: readonly Target[];
  /** Parts beside the moving ones: they share a stretch across the axis. */
  readonly beside: readonly Neighbor[];
  readonly input: SnapInput;
}

export type Snapper = (on: SnapAxis) => SnapCandidate[];
