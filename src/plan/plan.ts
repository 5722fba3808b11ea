import { type Check, orderChecks } from '../check/check.ts';
import type { Cutting } from '../cutting/result.ts';
import type { Design } from '../design/schema.ts';
import { toldOnce } from '../layout/fill/toldOnce.ts';
import type { PatternPlan } from '../patterns/result.ts';
import { type CutWork, cutWork, draftCutting } from './cuttingStage.ts';
import { letteringFinishChecks, limitChecks } from './designChecks.ts';
import type { Elsewhere, PlanFacts, PlanGiven } from './stages/facts.ts';
import { createPlanMemory } from './stages/memory.ts';
import type { PatternWork } from './stages/patterns.ts';
import { type Made, through } from './stages/stage.ts';
import { PLAN_STAGES, patternWorkOf } from './stages/table.ts';
import {
  type Effort,
  type Joined,
  type Painted,
  type Plan,
  PlanCancelled,
  type Supplies,
  type Watch,
} from './types.ts';

/** Search steps for each stock. Large enough to prove the starters' boards, small enough for a second of work. */
export const DEFAULT_EFFORT: Effort = { nodes: 200_000 };

/** Search steps for numbers that come before the search has ended. */
const DRAFT_EFFORT: Effort = { nodes: 6000 };

export interface PlanOptions extends Watch {
  readonly effort?: Effort | undefined;
  /**
   * Told the whole plan with the boards and sheets that are found soon, where looking for fewer takes long. Not
   * told where cutting is as it was.
   */
  readonly onDraft?: ((plan: Plan) => void) | undefined;
  readonly beside?: Beside | undefined;
}

/** What can be done by somebody else once all is joined, each by itself. */
export interface Work {
  readonly cutting: CutWork;
  readonly patterns: PatternWork;
}

/** What it comes to. */
export interface Done {
  readonly cutting: Cutting;
  readonly patterns: readonly PatternPlan[];
}

/** Gives what is asked for in the end: null where the planner is to do it. */
export type Asked = { readonly [W in keyof Done]: () => Done[W] | null };

/** Who works beside the planner, and is told what is known as soon as it is. */
export interface Beside {
  readonly joined: (joined: Joined, work: Work) => Asked;
  readonly painted: (painted: Painted) => void;
  readonly planned: (plan: Plan) => void;
}

export type Planner = (design: Design, supplies: Supplies, options?: PlanOptions) => Plan;

/** The whole job from nothing: the same design and supplies give the same plan. */
export function plan(design: Design, supplies: Supplies, options: PlanOptions = {}): Plan {
  return createPlanner()(design, supplies, options);
}

/** A plan is made of what nobody holds. */
const NOBODY: ReadonlySet<string> = new Set();

/**
 * A planner that remembers each stage's last result by the identity of what went into it, so that an edit
 * computes again only what follows from it. Its plans equal plans from nothing.
 */
export function createPlanner(): Planner {
  const memory = createPlanMemory();
  let made: Partial<Made<PlanFacts>> = {};
  return (design, supplies, options = {}) => {
    const { nodes } = options.effort ?? DEFAULT_EFFORT;
    const given: PlanGiven = {
      ...{ design, tables: supplies.tables, supplies, nodes, watch: options, memory, held: NOBODY },
      elsewhere: null,
    };
    let known = given as PlanGiven & PlanFacts;
    const steps = Object.entries(PLAN_STAGES);
    steps.forEach(([name, stages], done) => {
      if (options.cancelled?.()) throw new PlanCancelled();
      options.onStage?.(name, done, steps.length);
      if (name === 'cutting' && options.onDraft) tellDraft(known, options.onDraft);
      const next = through<PlanGiven & PlanFacts, PlanFacts>(stages, known, made);
      made = { ...made, ...next.made };
      known = next.facts;
      if (name === 'joinery' && options.beside) {
        known = { ...known, elsewhere: askedOf(options.beside, known) };
      }
      if (name === 'marks') options.beside?.painted(paintedOf(known));
    });
    const plan = planOf(known);
    options.beside?.planned(plan);
    return plan;
  };
}

/** Has somebody work beside; patterns are known by what stands on them. */
function askedOf(beside: Beside, known: PlanGiven & PlanFacts): Elsewhere {
  const work: Work = { cutting: cutWork(known), patterns: patternWorkOf(known) };
  const asked = beside.joined(joinedOf(known), work);
  return {
    cutting: asked.cutting,
    patterns: () => {
      const plans = asked.patterns() ?? [];
      return new Map(plans.map((plan, i) => [known.memory.textOf(work.patterns.requests[i]), plan]));
    },
  };
}

/** With what is done a plan is of what is left: that is soon found, and boards must not change under the saw. */
function tellDraft(known: PlanGiven & PlanFacts, tell: (plan: Plan) => void): void {
  const { cuts, design, nodes, watch, memory } = known;
  if (design.job) return;
  const cutting = draftCutting(cuts, DRAFT_EFFORT.nodes, { nodes, watch, results: memory.results });
  if (cutting)
    tell(
      planOf(
        through<PlanGiven & PlanFacts, PlanFacts>(PLAN_STAGES.shopping, { ...known, cutting }, {}).facts,
      ),
    );
}

const joinedOf = ({ lettering, letters, grounds, supplies, ...known }: PlanGiven & PlanFacts): Joined => ({
  ...{ design: known.design, language: supplies.language, stocks: known.stocks, tables: known.tables },
  ...{ face: known.face, keepClears: known.keepClears, layout: known.layout, joinery: known.joinery },
  ...{ sawnLetters: letters.solids, signs: lettering.signs, seams: grounds.seams, looks: known.looks },
});

const paintedOf = ({ finish, load, fold, marks }: PlanFacts): Painted => ({ finish, load, fold, marks });

/** All that was found, put together. */
function planOf(known: PlanGiven & PlanFacts): Plan {
  const { design, lettering, letters, patterns, shopping } = known;
  const counts = {
    letters: lettering.signs.reduce((sum, s) => sum + s.lettered.glyphs.length, 0),
    pages: patterns.sets.reduce((sum, s) => sum + s.pages.length, 0),
  };
  const { bed, layout, joinery, cutting, fastening } = known;
  const rooms = [
    layout,
    lettering,
    joinery,
    known.grounds,
    letters,
    cutting,
    known.finish,
    known.load,
    known.fold,
    fastening,
    known.marks,
    patterns,
  ];
  const checks: Check[] = [
    ...letteringFinishChecks(design),
    ...limitChecks(design, counts),
    ...bed.checks,
    ...rooms.flatMap((room) => room.checks),
  ];
  return {
    ...joinedOf(known),
    ...paintedOf(known),
    ...{ cutting, fastening, patterns: patterns.sets, shopping },
    total: shopping.reduce((sum, line) => sum + line.price, 0),
    checks: orderChecks(toldOnce(checks, design.parts)),
  };
}
