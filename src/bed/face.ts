import type { Box, Quad, Region } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';
import type { Bows, Edges } from './bows.ts';

export type LevelId = 'rim' | 'ledge' | 'field' | 'skin';

/** One plane of the face. */
export interface Level {
  readonly id: LevelId;
  /** Out of the rim (or skin) plane; negative is recessed. */
  readonly z: Mm;
  readonly region: Region;
  /** Outer bounds. */
  readonly box: Box;
  /** Opening inside it (rim, ledge), which is the outer bounds of the next level. */
  readonly inner: Box | null;
  /** How thick the wood is right behind this level, before air, mattress or room: what a brad may bite into. */
  readonly behind: Mm;
  /** Material right behind the level. */
  readonly material: string;
}

/** A board of the bare bed, with its true length after corner laps. */
export interface BedBoard {
  readonly name: 'side rail' | 'end rail' | 'side cleat' | 'end cleat';
  readonly length: Mm;
  readonly width: Mm;
  readonly thickness: Mm;
  readonly count: number;
  readonly material: string;
}

/** A level's outside where it is not true, as it lies around the true one. */
export interface RealEdges {
  readonly of: 'rim' | 'field';
  /** The box that it was meant to be. */
  readonly box: Box;
  /** Where its corners are, counterclockwise from the lower left one. */
  readonly corners: Quad;
  readonly longer: Mm;
  /** Of both upright edges together, where nothing tells which of them it is. */
  readonly bow: Mm;
  readonly bows: Bows;
  /** The four between the corners, the lower one first; those that bow as they lie. */
  readonly edges: Edges;
}

/** What the room sees, computed from the bed's measures. */
export interface Face {
  readonly width: Mm;
  readonly height: Mm;
  readonly box: Box;
  /** From the highest to the deepest. */
  readonly levels: readonly Level[];
  readonly boards: readonly BedBoard[];
  /** Platform size across and along the face (x, y). */
  readonly platform: { readonly w: Mm; readonly h: Mm };
  /** Depth of the platform's top below the frame's top. */
  readonly platformBelowTop: Mm;
  /** How far the mattress stands above the frame; negative: it lies within. */
  readonly mattressProud: Mm;
  /** From the face (z = 0, skin included) back to the frame's other edge. */
  readonly frameDepth: Mm;
  /** Absent: nothing was measured, or all that was is true. Sizes and boxes are those of the true rectangle. */
  readonly real?: readonly RealEdges[];
}
