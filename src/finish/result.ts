import type { Check } from '../check/check.ts';
import type { Color } from '../drawing/drawing.ts';
import type { Region } from '../geometry/shape.ts';
import type { LetterLayer } from '../lettering/result.ts';
import type { Liters, Mm, Money, SquareMeters } from '../measure/units.ts';

/** How well the lettering of a sign stands out from what it is seen on, 1 to 21. */
export interface SignContrast {
  readonly sign: string;
  readonly ratio: number;
}

/** A place that stays bare under paint, because something is glued there: glue holds to wood, not to paint. */
export interface BareArea {
  /** What is glued there, and what it is glued onto or which painted shape it would cover. */
  readonly part: string;
  readonly on: string;
  /** Finish that it is kept free of. */
  readonly finish: string;
  readonly z: Mm;
  readonly region: Region;
}

/** Containers of one size; `volume` and `price` are those of a single one. */
export interface ContainerBuy {
  readonly container: string;
  readonly count: number;
  readonly volume: Liters;
  readonly price: Money;
}

/** What one step paints of one part in one finish. */
export interface PaintJob {
  /** The step of the work that does it. */
  readonly act:
    | 'prime-backs'
    | 'paint-before'
    | 'letter'
    | 'paint-around-letters'
    | 'mount-letters'
    | 'paint-ground'
    | 'paint-after'
    | 'last-coat';
  /** Laid part. */
  readonly part: string;
  readonly finish: string;
  /** The part itself, or a color of the lettering on it. */
  readonly of: 'part' | LetterLayer['role'];
  readonly face: SquareMeters;
  readonly edge: SquareMeters;
  readonly back: SquareMeters;
  /** What a coat of primer goes on, each edge counted as often as its material drinks more. */
  readonly primed: SquareMeters;
  /** Coats that this step gives, after so many of primer. */
  readonly coats: number;
  readonly primerCoats: number;
}

/** What one finish covers and what is bought for it. */
export interface FinishUse {
  readonly finish: string;
  /** Seen from the front. */
  readonly face: SquareMeters;
  /** Seen: exposed edges, returns of steps, insides of openings, girth of shaped stock beyond its flat view. */
  readonly edge: SquareMeters;
  /** What the steps paint, seen or not: faces, edges, and backs with back-priming. */
  readonly painted: { readonly face: SquareMeters; readonly edge: SquareMeters; readonly back: SquareMeters };
  readonly coats: number;
  /** Paint of all coats that the steps give, waste added. */
  readonly volume: Liters;
  readonly primer: Liters;
  readonly buy: readonly ContainerBuy[];
  readonly left: Liters;
  readonly cost: Money;
  /** Masking tape: border with other finishes on the same part, and around what stays bare for glue. */
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
  /** All painting, from which paint and primer are reckoned; the steps of the work tell the same. */
  readonly jobs: readonly PaintJob[];
  /** Where surfaces that are painted before parts are fixed stay bare for glue. */
  readonly bare: readonly BareArea[];
  /**
   * Wet paint that each part carries: all coats of its finishes and their primer, by the faces, edges and
   * backs they go on, waste left out.
   */
  readonly onParts: readonly { readonly part: string; readonly liters: Liters }[];
  /** Parts painted on the bench before they are fixed, and those painted in place. */
  readonly before: readonly string[];
  readonly after: readonly string[];
  readonly contrasts: readonly SignContrast[];
  readonly checks: readonly Check[];
}
