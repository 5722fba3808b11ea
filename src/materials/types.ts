import type { Point } from '../geometry/shape.ts';
import type { Deg, Kg, KgPerM3, Liters, Mm, Money } from '../measure/units.ts';

/** Where a figure comes from: a source, or "common practice, no source". */
export interface Sourced {
  readonly source: string;
}

/** A solid that parts are made of. */
export interface Material extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly density: KgPerM3;
  /** `#rrggbb`, bare, in plain daylight: our own choice, by eye, no source. Boards of one wood differ more than woods do. */
  readonly color: string;
  /** How much more primer a cut edge drinks than a face (1 = the same). */
  readonly edgeThirst: number;
  /** `soft` takes brads and screws as softwood does. */
  readonly hardness: 'soft' | 'hard' | 'board';
}

export interface BoardLength {
  readonly length: Mm;
  readonly price: Money;
}

export interface SheetSize {
  /** Along the grain. */
  readonly length: Mm;
  readonly width: Mm;
  readonly price: Money;
}

/** Flat strip stock: a plain rectangle in section; may be turned over end for end. */
export interface FlatStock {
  readonly form: 'flat';
  readonly id: string;
  readonly name: string;
  readonly material: string;
  /** Seen from the front. */
  readonly width: Mm;
  /** Out of the face. */
  readonly thickness: Mm;
  readonly lengths: readonly BoardLength[];
}

/** Molding: shaped in section, so it has one face and never is turned over. */
export interface ShapedStock {
  readonly form: 'shaped';
  readonly id: string;
  readonly name: string;
  readonly material: string;
  /** Seen from the front (the height of a sprung molding on the wall). */
  readonly width: Mm;
  /** Out of the face (the projection of a sprung molding). */
  readonly thickness: Mm;
  /** Developed length of the painted section, from back edge to back edge. */
  readonly girth: Mm;
  /**
   * Section, as a closed ring: x from 0 to `width` across the face, y from 0 (the back) to `thickness`.
   */
  readonly section: readonly Point[];
  /** Sprung molding: the angle between its back and the face it leans on. Absent: it lies flat. */
  readonly spring?: Deg | undefined;
  /** Sprung molding: width of the board itself, measured along its back. */
  readonly boardWidth?: Mm | undefined;
  readonly lengths: readonly BoardLength[];
}

export interface SheetStock {
  readonly form: 'sheet';
  readonly id: string;
  readonly name: string;
  readonly material: string;
  readonly thickness: Mm;
  /** Has a grain or a print that parts may have to follow. */
  readonly grain: boolean;
  readonly sizes: readonly SheetSize[];
}

export type Stock = FlatStock | ShapedStock | SheetStock;

export interface Brad extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly diameter: Mm;
  readonly lengths: readonly Mm[];
  readonly price: Money;
  /** Brads in a box at that price. */
  readonly count: number;
}

export interface Screw extends Sourced {
  readonly id: string;
  readonly name: string;
  /** `machine` goes into thread of what is bought; `hanger` has that thread at one end, and at the other one for wood. */
  readonly thread: 'wood' | 'machine' | 'hanger';
  readonly diameter: Mm;
  /** Of what passes through the wood: what is drilled for it. */
  readonly hole?: Mm;
  readonly lengths: readonly Mm[];
  readonly price: Money;
  readonly count: number;
}

export interface Container extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly system: 'us' | 'metric';
  readonly volume: Liters;
}

export interface Glue extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly system: 'us' | 'metric';
  readonly volume: Liters;
  readonly price: Money;
  /** Cross section of the bead laid down, square millimeters. */
  readonly bead_mm2: number;
}

export interface Tape extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly system: 'us' | 'metric';
  readonly length: Mm;
  readonly width: Mm;
  readonly price: Money;
}

export interface Paper extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly width: Mm;
  /** Absent: a roll, as long as it needs to be. */
  readonly height?: Mm | undefined;
}

export interface Mattress extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly width: Mm;
  readonly length: Mm;
}

/** What hardware is, by generic kind. */
export type HardwareKind =
  | 'pull'
  | 'knob'
  | 'strap-hinge'
  | 'hanger'
  | 'nut'
  | 'escutcheon'
  | 'lamp'
  | 'letter-slot'
  | 'number-plate';

/** A bought thing of a usual size, as it is screwed on. */
export interface Hardware extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly kind: HardwareKind;
  readonly width: Mm;
  readonly height: Mm;
  /** Out of what it is on. */
  readonly depth: Mm;
  readonly mass_kg: Kg;
  readonly price: Money;
  readonly color: string;
  /** Its outline in its box, as shapes of panels are told. */
  readonly shape:
    | { readonly form: 'rectangle' | 'round' }
    | { readonly form: 'corners'; readonly cut: 'rounded'; readonly size: Mm }
    | { readonly form: 'arched'; readonly rise: Mm }
    | { readonly form: 'polygon'; readonly points: readonly (Share & { readonly side?: Bow })[] };
  /** How it may be held, the best first. */
  readonly ways: readonly HardwareWay[];
  /** Middles of its screws. */
  readonly holes: readonly Share[];
}

/** A screw that holds a piece of hardware, from the front or from behind, and how much of its length is in the hardware. */
export interface HardwareWay {
  readonly screw: string;
  readonly from: 'front' | 'back';
  readonly into: Mm;
}

/** A place in a box, in shares of it from its lower left. */
interface Share {
  readonly u: number;
  readonly v: number;
}

interface Bow {
  readonly as: 'rise';
  readonly rise: Mm;
}

export interface FontEntry {
  readonly id: string;
  readonly name: string;
  /** `sans`, `slab`, `serif`, `script`, `deco`, `stencil`. */
  readonly family: string;
  /** npm package and file it ships in. */
  readonly package: string;
  readonly file: string;
  readonly license: string;
  /** Every letter already holds together when cut. */
  readonly stencilReady: boolean;
}

/** All the tables that come with the tool, as data from `assets/`. */
export interface Tables {
  readonly materials: readonly Material[];
  readonly stocks: readonly Stock[];
  readonly brads: readonly Brad[];
  readonly screws: readonly Screw[];
  readonly containers: readonly Container[];
  readonly glues: readonly Glue[];
  readonly tapes: readonly Tape[];
  readonly papers: readonly Paper[];
  readonly mattresses: readonly Mattress[];
  readonly hardware: readonly Hardware[];
  readonly fonts: readonly FontEntry[];
}
