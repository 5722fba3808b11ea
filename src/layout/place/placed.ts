import type { Face } from '../../bed/face.ts';
import type { Check } from '../../check/check.ts';
import type { Part } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import type { FillCut } from '../fill/fill.ts';
import type { LaidPart } from '../laid.ts';

/** A laid part with the bounds of its footprint, which may reach past its box. */
export interface Placing {
  readonly laid: LaidPart;
  readonly bounds: Box;
}

/** What a part came to, with all that it came from. */
export interface PlacedPart {
  readonly from: {
    readonly part: Part;
    readonly box: Box;
    readonly face: Face;
    readonly stocks: ReadonlyMap<string, Stock>;
    readonly finishes: ReadonlySet<string>;
    readonly ground: Ground | null;
  };
  readonly placings: readonly Placing[];
  readonly checks: readonly Check[];
  /** Of a fill: its pieces before they were put in place. */
  readonly cut: FillCut | null;
  /** As it was before its ends were brought to what they stop at; only where some are. */
  readonly unstopped?: Unstopped;
}

/** What a part is told to lie on; null: whichever level is beneath it. */
export interface Ground {
  readonly on: string;
  readonly z: Mm;
}

/** A placed part before its ends were brought to what they stop at, and what that was. */
export interface Unstopped {
  readonly placed: PlacedPart;
  /** By what its ends name; null: it is not there. */
  readonly sources: ReadonlyMap<string, Source | null>;
}

/** What has a border: the face, a level, a placed part, or one laid member of it. */
export type Source = Face | Face['levels'][number] | PlacedPart | Placing;
