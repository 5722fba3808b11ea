import type { Check } from '../check/check.ts';
import type { Color } from '../drawing/drawing.ts';
import type { Region } from '../geometry/shape.ts';
import type { Liters, Mm, Money, SquareMeters } from '../measure/units.ts';

/** Containers of one size; `volume` and `price` are those of a single one. */
export interface ContainerBuy {
  readonly container: string;
  readonly count: number;
  readonly volume: Liters;
  readonly price: Money;
}

/** What one finish covers and what is bought for it. */
export interface FinishUse {
  readonly finish: string;
  /** Seen from the front. */
  readonly face: SquareMeters;
  /** Exposed edges, returns of steps, insides of openings, girth of shaped stock beyond its flat view. */
  readonly edge: SquareMeters;
  /** With back-priming: undersides, and the faces that other parts cover. */
  readonly back: SquareMeters;
  readonly coats: number;
  /** Paint of all coats, waste added. */
  readonly volume: Liters;
  readonly primer: Liters;
  readonly buy: readonly ContainerBuy[];
  readonly left: Liters;
  readonly cost: Money;
  /** Border with other finishes on the same part: masking tape. */
  readonly tape: Mm;
}

/** Where each finish shows on the face, for the paint map and the color view. */
export interface ShownArea {
  /** Laid part, or the id of a level whose bare wood is seen. */
  readonly part: string;
  readonly finish: string | null;
  /** Color of the finish over what it lies on, or of the bare part; null for the bed's own wood. */
  readonly look: Color | null;
  readonly z: Mm;
  readonly region: Region;
}

export interface FinishPlan {
  readonly uses: readonly FinishUse[];
  readonly shown: readonly ShownArea[];
  /**
   * Wet paint that each part carries: all coats of its finishes and their primer, by the faces, edges and
   * backs they go on, waste left out.
   */
  readonly onParts: readonly { readonly part: string; readonly liters: Liters }[];
  /** Parts painted on the bench before they are fixed, and those painted in place. */
  readonly before: readonly string[];
  readonly after: readonly string[];
  readonly checks: readonly Check[];
}
