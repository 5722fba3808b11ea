import type { Check } from '../../check/check.ts';
import type { Cutting } from '../../cutting/result.ts';
import type { Finish } from '../../design/schema.ts';
import type { PartsFastened } from '../../fastening/memory.ts';
import type { FasteningPlan } from '../../fastening/result.ts';
import type { LetterPaint, Surface } from '../../finish/input.ts';
import type { FinishPlan } from '../../finish/result.ts';
import type { FoldPlan } from '../../fold/result.ts';
import type { Joinery, Solid } from '../../joinery/piece.ts';
import type { LaidPart } from '../../layout/laid.ts';
import type { LoadPlan } from '../../load/result.ts';
import type { MarksPlan } from '../../marks/result.ts';
import type { Glue } from '../../materials/types.ts';
import type { PageSetup } from '../../patterns/paper.ts';
import type { StockCut } from '../cuttingStage.ts';
import type { Grounds } from '../ground.ts';
import type { LetterWork } from '../letters.ts';
import type { ShoppingLine, SignPlan, Supplies, Watch } from '../types.ts';
import type { FaceFacts, FaceGiven } from './face.ts';
import type { PlanMemory } from './memory.ts';
import type { ByText, PatternsFound } from './patterns.ts';

/** What somebody else has made by the time that it is asked for: it is what the stages would come to. */
export interface Elsewhere {
  /** Null where it is to be made. */
  readonly cutting: () => Cutting | null;
  readonly patterns: () => ByText;
}

/** What a plan follows from. */
export interface PlanGiven extends FaceGiven {
  readonly supplies: Supplies;
  /** Most search steps for each stock. */
  readonly nodes: number;
  /** Told while it runs; nothing follows from it. */
  readonly watch: Watch;
  /** Nothing follows from who made what. */
  readonly elsewhere: Elsewhere | null;
  readonly memory: PlanMemory;
}

/** What each stage of a plan comes to. */
export interface PlanFacts extends FaceFacts {
  readonly lettering: { readonly signs: readonly SignPlan[]; readonly checks: readonly Check[] };
  /** The laid parts without what is written on signs, or earlier ones that are the same. */
  readonly bodies: readonly LaidPart[];
  /** What is joined, without letters. */
  readonly joined: Joinery;
  readonly grounds: Grounds;
  readonly letters: LetterWork;
  readonly joinery: Joinery;
  /** What stands out of the face: parts after their joints, and letters that are glued on. */
  readonly standing: readonly Solid[];
  /** What there is to fix: parts that their cuts leave nothing of have no step. */
  readonly fixed: readonly LaidPart[];
  readonly cuts: readonly StockCut[];
  readonly cutting: Cutting;
  /** Letters that are painted. */
  readonly painted: readonly LetterPaint[];
  /** What is seen or painted, or earlier ones that are the same. */
  readonly surfaces: readonly Surface[];
  /** The finishes with the paint that is bought for them by now among what is there. */
  readonly paints: readonly Finish[];
  readonly finish: FinishPlan;
  readonly load: LoadPlan;
  readonly fold: FoldPlan;
  readonly glue: Glue | null;
  readonly fastened: PartsFastened;
  readonly fastening: FasteningPlan;
  readonly marks: MarksPlan;
  readonly pages: PageSetup | null;
  readonly patterns: PatternsFound;
  readonly shopping: readonly ShoppingLine[];
}
