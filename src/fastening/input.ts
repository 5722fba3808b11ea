import type { Bed, KeepClear } from '../bed/bed.ts';
import type { Face } from '../bed/face.ts';
import type { Check } from '../check/check.ts';
import type { Design } from '../design/schema.ts';
import type { Piece, Solid } from '../joinery/piece.ts';
import type { LaidPart } from '../layout/laid.ts';
import type { Brad, Glue, Screw, Stock } from '../materials/types.ts';
import type { Kg } from '../measure/units.ts';
import type { Shank } from './apart.ts';
import type { Lever } from './lever.ts';
import type { Fastened } from './result.ts';

export interface FasteningInput {
  readonly bed: Bed;
  readonly face: Face;
  readonly keepClears: readonly KeepClear[];
  readonly parts: readonly LaidPart[];
  readonly solids: readonly Solid[];
  /** Strips and runs are fastened piece by piece, clear of their joints. */
  readonly pieces: readonly Piece[];
  readonly stocks: readonly Stock[];
  /** Mass of each laid part, from the load. */
  readonly masses: readonly { readonly part: string; readonly mass: Kg }[];
  readonly settings: Design['fastening'];
  /** The table's entries that the settings name; null when they are not there. */
  readonly brad: Brad | null;
  readonly screw: Screw | null;
  readonly glue: Glue | null;
  /** All of the table, for hardware that names its own. */
  readonly screws: readonly Screw[];
}

/** How one part is fastened. */
export interface PartFastened {
  readonly fastened: readonly Fastened[];
  readonly checks: readonly Check[];
  /** By which its mass pulls at what holds it. */
  readonly lever: Lever;
  /** All that was driven in for it. */
  readonly shanks: readonly Shank[];
}
