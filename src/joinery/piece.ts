import type { Check } from '../check/check.ts';
import type { TapeRead } from '../design/schema.ts';
import type { Point, Region } from '../geometry/shape.ts';
import type { Relief } from '../layout/laid.ts';
import type { Deg, Mm } from '../measure/units.ts';

export type EndCut = 'square' | 'miter' | 'butt' | 'cope' | 'return' | 'plunge' | 'point' | 'sawn';

/** One end of a piece, as the saw is set for it. */
export interface PieceEnd {
  readonly cut: EndCut;
  /** 0 is square; positive: the long point is on the left edge, walking from the start end to the end end. */
  readonly miter: Deg;
  readonly bevel: Deg;
  /** Which edge is the long one; `both` for square, `middle` for two cuts that meet in a point. */
  readonly long: 'left' | 'right' | 'both' | 'middle';
  /** Part that it meets, if any. */
  readonly with: string | null;
  /** Second cut of a two-cut end. */
  readonly second: { readonly miter: Deg; readonly bevel: Deg } | null;
  /** Sprung molding: the settings with the molding nested at its spring angle on the table. */
  readonly nested: { readonly miter: Deg; readonly bevel: Deg } | null;
}

/**
 * A stretch sawn out to part of the thickness: a groove, or where a half-lap lets another piece cross. The piece that runs
 * through keeps its face and is notched on its back; the other one is notched on its face.
 */
export interface Notch {
  /** Outermost extent along the piece, from its start end. */
  readonly from: Mm;
  readonly to: Mm;
  readonly depth: Mm;
  /** `groove`: along the piece on its face; `from` and `to` are counted from its lower edge. */
  readonly side: 'face' | 'back' | 'groove';
  /** Saw angle of its shoulders, 0 is square; positive: they lie farther from the start on the left edge. */
  readonly miter: Deg;
  /** Seen from the front, in the piece's own coordinates. */
  readonly outline: readonly Point[];
}

/**
 * A corner that the tape is held to. `long-point` and `short-point`: the outer and the inner corner of a
 * slanted end; `square`: either corner of a square one; `shoulder`: where two cuts that meet in a point leave
 * the edge; `corner`: any other; `outermost`: no corner, but as far as the outline reaches.
 */
export type TapeCorner = 'long-point' | 'short-point' | 'square' | 'shoulder' | 'corner' | 'outermost';

/**
 * How the tape lies that reads a piece's length, from the start end to the end end: along a long edge, along
 * the longest `sawn` side where the cuts leave no long edge, or over all of what is sawn to an outline.
 */
export interface Measured {
  readonly edge: 'left' | 'right' | 'sawn' | 'overall';
  readonly from: TapeCorner;
  readonly to: TapeCorner;
}

/** A bend in the plane of the face. */
export interface Bent {
  /** Of its inner edge. */
  readonly radius: Mm;
  /** Its middle line on the face, as chords. */
  readonly along: readonly Point[];
}

/** A long edge that is planed or sawn to an edge of the bed that bows; lengths and ends are those before. */
export interface Scribed {
  readonly edge: 'left' | 'right';
  /** The most that comes off, and how far along the piece from its start end. */
  readonly most: Mm;
  readonly at: Mm;
  /** What is left ends here, in the piece's own coordinates from its start end. */
  readonly line: readonly Point[];
}

/** One piece of wood to cut. Identical pieces share a `label` and differ in `id`. */
export interface Piece {
  readonly id: string;
  /** Laid part it belongs to. */
  readonly part: string;
  /** Letter and number marked on the wood, such as `B3`; identical pieces share it. */
  readonly label: string;
  readonly name: string;
  /** Of a run: which of its straight lengths it is sawn from. */
  readonly leg?: number;
  readonly stock: string;
  readonly form: 'flat' | 'shaped' | 'sheet';
  /** What a tape reads between two corners of the show face, told by `measured`. */
  readonly length: Mm;
  readonly measured: Measured;
  /** Lengths of the two long edges on the show face; null where the cuts leave none: a triangle has one. */
  readonly edges: { readonly left: Mm | null; readonly right: Mm | null };
  /** Wood that it takes along, from its outermost point to its outermost point with `margin` at both. */
  readonly overall: Mm;
  /** Wood left around the outline for the saw that follows it to run in. */
  readonly margin: Mm;
  readonly width: Mm;
  readonly thickness: Mm;
  readonly ends: readonly [PieceEnd, PieceEnd];
  /** `allowance` is already in the length of a piece that is measured in place. */
  readonly fit: {
    readonly inPlace: boolean;
    readonly allowance: Mm;
    /** What a tape read in place, to which it is cut, and the angles that were planned; nothing is left on it then. */
    readonly read?: TapeRead & { readonly miters: readonly [Deg, Deg] };
  };
  /** Outline in its own coordinates: start end left, left edge up; the show face toward the reader. */
  readonly outline: readonly Point[];
  /** Openings sawn out of a panel, in the same coordinates. */
  readonly holes: readonly (readonly Point[])[];
  /** What it is bent to once it is cut; its lengths are those of the straight piece, and stay those of its middle line. */
  readonly bent?: Bent;
  /** Half-laps, in order from the start end. */
  readonly notches: readonly Notch[];
  /** Edges to be scribed once it is cut. */
  readonly scribed?: readonly Scribed[];
  /** Where it lies on the face. */
  readonly placed: Region;
  readonly z0: Mm;
  readonly z1: Mm;
  /** Sheets: direction of the grain in its own coordinates. */
  readonly grain: 'along' | 'across' | 'any';
  /** Its measures as told to a person: rounded so that the pieces of one span add up to it. */
  readonly shown: Shown;
}

/** Rounded measures of a piece; `length` is that of the edge it is measured along. */
export type Shown = Pick<Piece, 'length' | 'width' | 'edges'>;

/** A joint that was proposed or decided. */
export interface JointFound {
  readonly parts: readonly [string, string];
  readonly kind: 'miter' | 'butt' | 'cope' | 'half-lap';
  readonly through: string | null;
  readonly at: Point;
  readonly decided: boolean;
}

/** An arc made of equal straight segments. */
export interface SegmentedArch {
  readonly radius: Mm;
  readonly segments: number;
  /** At the center, one segment. */
  readonly angle: Deg;
  /** Outside length of one segment, corner to corner. */
  readonly chord: Mm;
  /** Saw angle between two segments: half of `angle`. */
  readonly miter: Deg;
  /** How far each straight segment falls short of the circle. */
  readonly sagitta: Mm;
}

/** An arc sawn from sheet in pieces of a ring, or bent of boards. */
export interface SawnArch {
  readonly bent: boolean;
  /** Radii of both edges. */
  readonly inner: Mm;
  readonly outer: Mm;
  readonly pieces: number;
  /** At the center, one piece: its joints lie on radii. */
  readonly angle: Deg;
  /** Of its edges from cut to cut. */
  readonly lengths: { readonly inner: Mm; readonly middle: Mm; readonly outer: Mm };
}

/** An arc of a run. */
export type ArchFound = (SegmentedArch | SawnArch) & {
  /** Laid part. */
  readonly part: string;
};

export interface Joinery {
  readonly pieces: readonly Piece[];
  readonly joints: readonly JointFound[];
  /** Every part as it is after its joints: what is painted, weighed and swept. */
  readonly solids: readonly Solid[];
  /** Strips and runs that their cuts leave nothing of: no step fixes them. */
  readonly gone: ReadonlySet<string>;
  readonly arches: readonly ArchFound[];
  readonly checks: readonly Check[];
}

/** A part as a prism over its footprint, after joints; the common currency of the rooms above joinery. */
export interface Solid {
  /** Laid part. */
  readonly part: string;
  readonly kind: 'strip' | 'run' | 'panel' | 'sign' | 'fitting' | 'painted' | 'lettering' | 'fill';
  readonly region: Region;
  readonly z0: Mm;
  readonly z1: Mm;
  readonly stock: string | null;
  readonly finish: string | null;
  readonly on: string;
  readonly relief?: Relief;
  /** What of it is sawn from sheet, up to where that reaches, and what is left of it then. */
  readonly sawn?: { readonly stock: string; readonly region: Region; readonly rest: Region; readonly z1: Mm };
  /** Moldings: the straight lengths of it, each with the line that its section follows. */
  readonly lengths?: readonly MoldedLength[];
}

/**
 * A straight length of molding on the face. Its section counts across it from its right edge, which is
 * `right` of the line from `start` along `along`.
 */
export interface MoldedLength {
  readonly start: Point;
  readonly along: Point;
  readonly right: Mm;
  readonly onEdge: boolean;
  readonly region: Region;
}
