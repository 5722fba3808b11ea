import type { KeepClear } from '../bed/bed.ts';
import type { Face } from '../bed/face.ts';
import type { Check } from '../check/check.ts';
import type { Cutting } from '../cutting/result.ts';
import type { Design } from '../design/schema.ts';
import type { FasteningPlan } from '../fastening/result.ts';
import type { Looks } from '../finish/look.ts';
import type { FinishPlan } from '../finish/result.ts';
import type { FoldPlan } from '../fold/result.ts';
import type { Point } from '../geometry/shape.ts';
import type { Joinery, Solid } from '../joinery/piece.ts';
import type { Layout } from '../layout/laid.ts';
import type { CutOut } from '../lettering/cut-out.ts';
import type { PlacedPhoto } from '../lettering/photo/placed.ts';
import type { Lettered } from '../lettering/result.ts';
import type { Shaper } from '../lettering/shaping/shape.ts';
import type { StencilSet } from '../lettering/stencil/layers.ts';
import type { LoadPlan } from '../load/result.ts';
import type { MarksPlan } from '../marks/result.ts';
import type { Stock, Tables } from '../materials/types.ts';
import type { Money } from '../measure/units.ts';
import type { PatternSet, PrinterCorrection } from '../patterns/result.ts';
import type { Grounds } from './ground.ts';
import type { Language } from './words/languages.ts';

/** What a plan needs besides the design; arrives from the editor or the command as values. */
export interface Supplies {
  readonly tables: Tables;
  /** Bytes of fonts by id of the table, those at hand; a font that a sign names and that is absent is a check. */
  readonly fonts: ReadonlyMap<string, Uint8Array>;
  /** Sets letters together; brought where the design's letters ask for it (`needsShaper`). */
  readonly shaper?: Shaper | null;
  /** Of the printer at hand, kept on the device. */
  readonly correction: PrinterCorrection;
  /** That patterns, packet and messages speak. */
  readonly language: Language;
}

/** How hard to look for the cheapest boards and sheets: a count of search steps, so that results repeat. */
export interface Effort {
  readonly nodes: number;
}

/** A sign's lettering with what is made from it. */
export interface SignPlan {
  /** Laid part. */
  readonly id: string;
  /** Lower left of the sign's box on the face: the origin of its lettering. */
  readonly at: Point;
  readonly lettered: Lettered;
  /** On its paper under the letters, from the back to the front. */
  readonly photos: readonly PlacedPhoto[];
  /** In color on paper: nothing of it is painted. */
  readonly printed: boolean;
  /** A stencil for each color, where the sign is made with stencils. */
  readonly stencils: StencilSet | null;
  /** Letters to be sawn, where the sign is made of those. */
  readonly cutOuts: readonly CutOut[];
}

export type ShoppingKind =
  | 'board'
  | 'sheet'
  | 'fitting'
  | 'paint'
  | 'primer'
  | 'brads'
  | 'screws'
  | 'glue'
  | 'tape'
  | 'paper';

/** One line of the shopping list. */
export interface ShoppingLine {
  readonly kind: ShoppingKind;
  /** Id of stock, finish, container or part. */
  readonly item: string;
  readonly name: string;
  /** Figures of its size, `pieces` those in a box; empty where there is none. */
  readonly size: {
    readonly length_mm?: number;
    readonly width_mm?: number;
    readonly volume_l?: number;
    readonly pieces?: number;
  };
  readonly count: number;
  readonly each: Money;
  readonly price: Money;
  /** Taken from what is owned: nothing to pay. */
  readonly owned: boolean;
  /** Bought for this job: what was paid for one, and the facts that say so; none for boards, which have names. */
  readonly got?: { readonly each: Money; readonly ids: ReadonlySet<string> };
  /** Bought over what is needed. */
  readonly spare?: true;
  /** False where no price is known: the total leaves it out. */
  readonly priced: boolean;
}

/** Everything that follows from a design. */
export interface Plan {
  readonly design: Design;
  readonly language: Language;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly tables: Tables;
  readonly face: Face;
  /** Those of the design and, where the legs stand on the face, theirs. */
  readonly keepClears: readonly KeepClear[];
  readonly layout: Layout;
  readonly joinery: Joinery;
  /** Letters sawn from sheet, where they stand on their signs. */
  readonly sawnLetters: readonly Solid[];
  readonly cutting: Cutting;
  readonly signs: readonly SignPlan[];
  /** Edges and joints that letters without a board lie over. */
  readonly seams: Grounds['seams'];
  readonly looks: Looks;
  readonly finish: FinishPlan;
  readonly load: LoadPlan;
  readonly fold: FoldPlan;
  readonly fastening: FasteningPlan;
  readonly marks: MarksPlan;
  readonly patterns: readonly PatternSet[];
  readonly shopping: readonly ShoppingLine[];
  readonly total: Money;
  /** All checks of all rooms in stable order. */
  readonly checks: readonly Check[];
}

/** What a plan knows once all is laid and joined. */
export type Joined = Pick<
  Plan,
  | 'design'
  | 'language'
  | 'stocks'
  | 'tables'
  | 'face'
  | 'keepClears'
  | 'layout'
  | 'joinery'
  | 'sawnLetters'
  | 'signs'
  | 'seams'
  | 'looks'
>;

/** What comes to it with paint, weight, swing and marks. */
export type Painted = Pick<Plan, 'finish' | 'load' | 'fold' | 'marks'>;

/** Pictures and outlines of the face show no more than this. */
export type Pictured = Joined & Painted;

/** All that the shopping list is made from; the language is for the names of what is in no table. */
export type ShoppingInput = Pick<
  Plan,
  'design' | 'language' | 'tables' | 'stocks' | 'layout' | 'cutting' | 'finish' | 'fastening' | 'patterns'
>;

/** What a long computation tells while it runs. */
export interface Watch {
  readonly onStage?: ((stage: string, done: number, of: number) => void) | undefined;
  readonly cancelled?: (() => boolean) | undefined;
}

/** Thrown out of a plan that its caller no longer wants. */
export class PlanCancelled extends Error {
  override readonly name = 'PlanCancelled';
}
