import { type Check, orderChecks } from '../check/check.ts';
import type { Cutting } from '../cutting/result.ts';
import type { Design } from '../design/schema.ts';
import { toldOnce } from '../layout/fill/toldOnce.ts';
import { draftCutting } from './cuttingStage.ts';
import { letteringFinishChecks, limitChecks } from './designChecks.ts';
import type { PlanFacts, PlanGiven } from './stages/facts.ts';
import { createPlanMemory } from './stages/memory.ts';
import { type Made, through } from './stages/stage.ts';
import { PLAN_STAGES } from './stages/table.ts';
import { type Effort, type Plan, PlanCancelled, type Supplies, type Watch } from './types.ts';

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
  const make = (design: Design, supplies: Supplies, options: PlanOptions, drafted: Cutting | null): Plan => {
    const { nodes } = options.effort ?? DEFAULT_EFFORT;
    const given = { design, tables: supplies.tables, supplies, nodes, watch: options, memory, held: NOBODY };
    let known = given as PlanGiven & PlanFacts;
    const steps = Object.entries(PLAN_STAGES);
    steps.forEach(([name, stages], done) => {
      if (options.cancelled?.()) throw new PlanCancelled();
      options.onStage?.(name, done, steps.length);
      if (name === 'cutting' && drafted) {
        known = { ...known, cutting: drafted };
        return;
      }
      // With what is done a plan is of what is left: that is soon found, and boards must not change under the saw.
      if (name === 'cutting' && options.onDraft && !design.job) {
        const search = { nodes, watch: options, results: memory.results };
        const draft = draftCutting(known.cuts, DRAFT_EFFORT.nodes, search);
        if (draft) options.onDraft(make(design, supplies, options, draft));
      }
      const next = through<PlanGiven & PlanFacts, PlanFacts>(stages, known, made);
      made = { ...made, ...next.made };
      known = next.facts;
    });
    return planOf(known);
  };
  return (design, supplies, options = {}) => make(design, supplies, options, null);
}

/** All that was found, put together. */
function planOf(known: PlanGiven & PlanFacts): Plan {
  const { design, supplies, lettering, letters, patterns, shopping } = known;
  const counts = {
    letters: lettering.signs.reduce((sum, s) => sum + s.lettered.glyphs.length, 0),
    pages: patterns.sets.reduce((sum, s) => sum + s.pages.length, 0),
  };
  const { bed, layout, joinery, cutting, finish, load, fold, fastening, marks } = known;
  const rooms = [
    layout,
    lettering,
    joinery,
    known.grounds,
    letters,
    cutting,
    finish,
    load,
    fold,
    fastening,
    marks,
    patterns,
  ];
  const checks: Check[] = [
    ...letteringFinishChecks(design),
    ...limitChecks(design, counts),
    ...bed.checks,
    ...rooms.flatMap((room) => room.checks),
  ];
  return {
    ...{ design, language: supplies.language, stocks: known.stocks, tables: known.tables },
    ...{ face: known.face, keepClears: known.keepClears, layout, joinery, sawnLetters: letters.solids },
    ...{
      cutting,
      signs: lettering.signs,
      seams: known.grounds.seams,
      looks: known.looks,
      finish,
      load,
      fold,
      fastening,
      marks,
    },
    ...{ patterns: patterns.sets, shopping },
    total: shopping.reduce((sum, line) => sum + line.price, 0),
    checks: orderChecks(toldOnce(checks, design.parts)),
  };
}
