import type { Check } from '../../check/check.ts';
import type { Cutting } from '../../cutting/result.ts';
import { createFasteningMemory } from '../../fastening/memory.ts';
import type { FasteningPlan } from '../../fastening/result.ts';
import { createFinishMemory } from '../../finish/memory.ts';
import type { FinishPlan } from '../../finish/result.ts';
import type { FoldPlan } from '../../fold/result.ts';
import type { Joinery, Solid } from '../../joinery/piece.ts';
import { KeptResults } from '../../layout/kept.ts';
import type { LaidPart } from '../../layout/laid.ts';
import type { LoadPlan } from '../../load/result.ts';
import type { MarksPlan } from '../../marks/result.ts';
import { createCuttingStage } from '../cuttingStage.ts';
import type { LetterWork } from '../letters.ts';
import { createSignPlanner } from '../signs.ts';
import type { ShoppingLine, SignPlan, Supplies, Watch } from '../types.ts';
import type { FaceFacts, FaceGiven } from './face.ts';
import { createPatternPlanner, type PatternsFound } from './patterns.ts';

/**
 * What stages that work part by part know of each. A planner owns it; it changes how soon a result comes, never
 * which.
 */
export const createPlanMemory = () => ({
  signs: createSignPlanner(),
  cutting: createCuttingStage(),
  finish: createFinishMemory(),
  fastening: createFasteningMemory(),
  patterns: createPatternPlanner(),
  joinery: new KeptResults(),
  results: new KeptResults(),
});

/** What a plan follows from. */
export interface PlanGiven extends FaceGiven {
  readonly supplies: Supplies;
  /** Most search steps for each stock. */
  readonly nodes: number;
  /** Told while it runs; nothing follows from it. */
  readonly watch: Watch;
  readonly memory: ReturnType<typeof createPlanMemory>;
}

/** What each stage of a plan comes to. */
export interface PlanFacts extends FaceFacts {
  readonly lettering: { readonly signs: readonly SignPlan[]; readonly checks: readonly Check[] };
  /** What is joined, without letters. */
  readonly joined: Joinery;
  readonly letters: LetterWork;
  readonly joinery: Joinery;
  /** What stands out of the face: parts after their joints, and letters that are glued on. */
  readonly standing: readonly Solid[];
  /** What there is to fix: parts that their cuts leave nothing of have no step. */
  readonly fixed: readonly LaidPart[];
  readonly cutting: Cutting;
  readonly finish: FinishPlan;
  readonly load: LoadPlan;
  readonly fold: FoldPlan;
  readonly fastening: FasteningPlan;
  readonly marks: MarksPlan;
  readonly patterns: PatternsFound;
  readonly shopping: readonly ShoppingLine[];
}
