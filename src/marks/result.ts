import type { Check } from '../check/check.ts';
import type { Axis } from '../design/schema.ts';
import type { Mm, SquareMeters } from '../measure/units.ts';

/** A running mark from one datum. */
export interface Mark {
  readonly datum: 'left' | 'bottom';
  readonly axis: Axis;
  readonly at: Mm;
  readonly part: string;
  readonly edge: 'low' | 'mid' | 'high' | 'hole';
  /** Rounded from the datum, as it is read off a tape. */
  readonly shown: Mm;
}

/** One line on a story stick: all edges that fall on it. */
export interface StickMark {
  readonly at: Mm;
  readonly shown: Mm;
  readonly edges: readonly { readonly part: string; readonly edge: Mark['edge'] }[];
}

/** A story stick: every different mark of one axis, from the datum on. */
export interface StoryStick {
  readonly axis: Axis;
  readonly datum: Mark['datum'];
  readonly marks: readonly StickMark[];
}

/** What a step paints of one part, and how often; it passes through from what paint is reckoned by. */
export interface Painting {
  readonly act: Step['act'];
  readonly part: string;
  readonly finish: string;
  /** The part itself, or a color of the lettering on it. */
  readonly of: string;
  /** Square meters. */
  readonly face: SquareMeters;
  readonly edge: SquareMeters;
  readonly back: SquareMeters;
  readonly primed: SquareMeters;
  readonly coats: number;
  readonly primerCoats: number;
}

/** One step of the order of work. Wording is made from its figures in `plan/words/`. */
export interface Step {
  readonly number: number;
  readonly act:
    | 'prepare'
    | 'cut-sheets'
    | 'cut-boards'
    | 'notch'
    | 'groove'
    | 'prime-backs'
    | 'mask-glue'
    | 'mask-joints'
    | 'paint-before'
    | 'mark'
    | 'paint-ground'
    | 'dry-fit'
    | 'fix'
    | 'cut-in-place'
    | 'assemble'
    | 'bend'
    | 'measure-in-place'
    | 'letter'
    | 'paint-around-letters'
    | 'mount-letters'
    | 'mount-print'
    | 'paint-after'
    | 'last-coat'
    | 'fit-hardware'
    | 'try-swing';
  readonly parts: readonly string[];
  readonly paints: readonly Painting[];
}

export interface MarksPlan {
  readonly marks: readonly Mark[];
  readonly sticks: readonly StoryStick[];
  readonly steps: readonly Step[];
  readonly checks: readonly Check[];
}
