import { faceOf } from '../bed/faceOf.ts';
import { allKeepClears } from '../bed/legFootprints.ts';
import { type Check, orderChecks } from '../check/check.ts';
import type { Cutting } from '../cutting/result.ts';
import type { Design } from '../design/schema.ts';
import { createFasteningMemory } from '../fastening/memory.ts';
import { planFastening } from '../fastening/planFastening.ts';
import { type Looks, looksOf } from '../finish/look.ts';
import { createFinishMemory } from '../finish/memory.ts';
import { planFinish } from '../finish/planFinish.ts';
import type { FinishPlan } from '../finish/result.ts';
import { planFold } from '../fold/planFold.ts';
import { planJoinery } from '../joinery/joinery.ts';
import { KeptResults } from '../layout/kept.ts';
import type { LaidPart } from '../layout/laid.ts';
import { layOut } from '../layout/layout.ts';
import { createMemory } from '../layout/memory.ts';
import { paintedLayers } from '../lettering/painted.ts';
import { planLoad } from '../load/planLoad.ts';
import { planMarks } from '../marks/planMarks.ts';
import { byId } from '../materials/lookup.ts';
import type { Stock, Tables } from '../materials/types.ts';
import type { PageSetup } from '../patterns/paper.ts';
import { joined, type PatternRequest, planPattern } from '../patterns/planPatterns.ts';
import type { PatternPlan } from '../patterns/result.ts';
import { createCuttingStage } from './cuttingStage.ts';
import { letteringFinishChecks, limitChecks } from './designChecks.ts';
import { gluing } from './gluing.ts';
import { type LetterWork, planLetters, withLetterGlue, withLetters } from './letters.ts';
import { keepingList, remembering, rememberingEach, textByContent } from './memory.ts';
import { patternRequests } from './patternRequests.ts';
import { reuse } from './reuse.ts';
import { shoppingList } from './shopping.ts';
import { createSignPlanner } from './signs.ts';
import { type Effort, type Plan, PlanCancelled, type SignPlan, type Supplies, type Watch } from './types.ts';
import { styleIn } from './words/languages.ts';
import { sayFor } from './words/say.ts';
import { PLAN_WORDS } from './words/tables.ts';

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

/**
 * A planner that remembers each stage's last result by the identity of what went into it, so that an edit
 * computes again only what follows from it. Its plans equal plans from nothing.
 */
export function createPlanner(): Planner {
  const stage = createStages();
  const make = (design: Design, supplies: Supplies, options: PlanOptions, drafted: Cutting | null): Plan => {
    const { tables } = supplies;
    const tell = (name: string, done: number) => {
      if (options.cancelled?.()) throw new PlanCancelled();
      options.onStage?.(name, done, STAGES);
    };

    tell('layout', 0);
    const stocks = stage.stocks(tables, design.stocks);
    const { face, checks: bedChecks } = stage.face(design.bed);
    const keepClears = stage.keepClears(design.keepClears, face, design.bed);
    const layout = stage.layout(design.parts, design.rules, design.finishes, keepClears, face, stocks);

    tell('lettering', 1);
    const lettering = stage.signs(layout.parts, design.fonts, supplies);

    tell('joinery', 2);
    const joined = stage.joinery(layout.parts, design.joints, stocks, design.shop, design.measure);
    const letters = stage.letters(
      layout.parts,
      lettering.signs,
      stocks,
      design.shop.sheetKerf,
      design.measure,
    );
    const joinery = stage.withLetters(joined, letters, stocks);
    const standing = stage.standing(joined.solids, letters);
    const fixed = stage.fixed(layout.parts, joined.gone);

    tell('cutting', 3);
    const effort = options.effort ?? DEFAULT_EFFORT;
    const cut = [joinery.pieces, stocks, design.owned, design.shop, effort.nodes] as const;
    const draft =
      options.onDraft && !drafted ? stage.cutting.draft(options, DRAFT_EFFORT.nodes, ...cut) : null;
    if (draft) options.onDraft?.(make(design, supplies, options, draft));
    const cutting = drafted ?? stage.cutting.of(options, ...cut);

    tell('finish', 4);
    const looks = stage.looks(layout.parts, face.levels, design.finishes, stocks, tables);
    const finish = stage.finish(
      looks,
      face,
      layout.parts,
      joined,
      lettering.signs,
      letters.solids,
      design.finishes,
      design.paint,
      stocks,
      tables,
    );

    tell('load', 5);
    const load = stage.load(design.bed, face, design.load, standing, layout.parts, stocks, tables, finish);

    tell('fold', 6);
    const fold = stage.fold(design.bed, face, design.keepClears, standing);

    tell('fastening', 7);
    const fastening = stage.fastening(
      design.bed,
      keepClears,
      design.fastening,
      face,
      fixed,
      joined,
      letters,
      stocks,
      load.byPart,
      tables,
    );

    tell('marks', 8);
    const marks = stage.marks(fixed, joined, design.rules, design.measure, finish);

    tell('patterns', 9);
    const patterns = stage.patterns(
      design,
      face,
      layout.parts,
      lettering.signs,
      marks.sticks,
      supplies,
      stocks,
    );

    tell('shopping', 10);
    const shopping = shoppingList({
      design,
      language: supplies.language,
      tables,
      stocks,
      layout,
      cutting,
      finish,
      fastening,
      patterns: patterns.sets,
    });
    const counts = {
      letters: lettering.signs.reduce((sum, s) => sum + s.lettered.glyphs.length, 0),
      pages: patterns.sets.reduce((sum, s) => sum + s.pages.length, 0),
    };
    const checks: Check[] = [
      ...letteringFinishChecks(design),
      ...limitChecks(design, counts),
      ...bedChecks,
      ...[
        layout,
        lettering,
        joinery,
        letters,
        cutting,
        finish,
        load,
        fold,
        fastening,
        marks,
        patterns,
      ].flatMap((s) => s.checks),
    ];
    return {
      design,
      language: supplies.language,
      stocks,
      tables,
      face,
      keepClears,
      layout,
      joinery,
      sawnLetters: letters.solids,
      cutting,
      signs: lettering.signs,
      looks,
      finish,
      load,
      fold,
      fastening,
      marks,
      patterns: patterns.sets,
      shopping,
      total: shopping.reduce((sum, line) => sum + line.price, 0),
      checks: orderChecks(checks),
    };
  };
  return (design, supplies, options = {}) => make(design, supplies, options, null);
}

const STAGES = 11;

/** The stages, each with its own memory. Arguments are what a stage depends on, and nothing else. */
function createStages() {
  const layoutMemory = createMemory();
  // The same parts stay the same list, so that an edit of colors or rules that moves nothing stops here.
  const laidParts = keepingList<LaidPart>();
  // Joinery is planned as a whole; what comes out the same stays the same, so that the stages after it know it again.
  let joined: Plan['joinery'] | null = null;
  const fasteningMemory = createFasteningMemory();
  const finishMemory = createFinishMemory();
  const results = new KeptResults();
  return {
    stocks: remembering((tables: Tables, own: readonly Stock[]) => byId([...tables.stocks, ...own])),
    face: remembering(faceOf),
    keepClears: remembering(allKeepClears),
    layout: remembering(
      (
        parts: Design['parts'],
        rules: Design['rules'],
        finishes: Design['finishes'],
        keepClears: Plan['keepClears'],
        face: Plan['face'],
        stocks: Plan['stocks'],
      ): Plan['layout'] => {
        const layout = layOut({ design: { parts, rules, finishes }, face, keepClears, stocks }, layoutMemory);
        return { ...layout, parts: laidParts(layout.parts) };
      },
    ),
    signs: createSignPlanner(),
    joinery: remembering(
      (
        parts: Plan['layout']['parts'],
        joints: Design['joints'],
        stocks: Plan['stocks'],
        shop: Design['shop'],
        measure: Design['measure'],
      ) => {
        const joinery = planJoinery({ parts, joints, stocks, shop, measure });
        joined = {
          ...joinery,
          pieces: reuse(joined?.pieces, joinery.pieces),
          solids: reuse(joined?.solids, joinery.solids),
        };
        return joined;
      },
    ),
    letters: remembering(
      (
        parts: Plan['layout']['parts'],
        signs: readonly SignPlan[],
        stocks: Plan['stocks'],
        kerf: Design['shop']['sheetKerf'],
        measure: Design['measure'],
      ) => planLetters({ parts, signs, stocks, kerf, measure }),
    ),
    withLetters: remembering(withLetters),
    /** What stands out of the face: parts after their joints, and letters that are glued on. */
    /** What there is to fix: parts that their cuts leave nothing of have no step. */
    fixed: remembering((parts: Plan['layout']['parts'], gone: Plan['joinery']['gone']) =>
      gone.size === 0 ? parts : parts.filter(({ id }) => !gone.has(id)),
    ),
    standing: remembering((solids: Plan['joinery']['solids'], letters: LetterWork) =>
      letters.solids.length === 0 ? solids : [...solids, ...letters.solids],
    ),
    cutting: createCuttingStage(),
    looks: remembering(
      (
        parts: Plan['layout']['parts'],
        levels: Plan['face']['levels'],
        finishes: Design['finishes'],
        stocks: Plan['stocks'],
        tables: Tables,
      ) => looksOf({ parts, levels, finishes, stocks, materials: byId(tables.materials) }),
    ),
    finish: remembering(
      (
        looks: Looks,
        face: Plan['face'],
        parts: Plan['layout']['parts'],
        joinery: Plan['joinery'],
        signs: readonly SignPlan[],
        sawn: LetterWork['solids'],
        finishes: Design['finishes'],
        paint: Design['paint'],
        stocks: Plan['stocks'],
        tables: Tables,
      ) =>
        planFinish(
          {
            face,
            solids: joinery.solids,
            lettering: signs.map((s) => ({
              sign: s.id,
              at: s.at,
              layers: paintedLayers(s.lettered, s.cutOuts.length > 0, s.stencils),
            })),
            sawn,
            ...gluing(parts, joinery.joints),
            finishes,
            looks,
            paint,
            stocks,
            materials: byId(tables.materials),
            containers: tables.containers,
          },
          finishMemory,
        ),
    ),
    load: remembering(
      (
        bed: Design['bed'],
        face: Plan['face'],
        limits: Design['load'],
        solids: Plan['joinery']['solids'],
        parts: Plan['layout']['parts'],
        stocks: Plan['stocks'],
        tables: Tables,
        finish: FinishPlan,
      ) =>
        planLoad(
          {
            bed,
            face,
            limits,
            solids,
            parts,
            stocks: [...stocks.values()],
            materials: tables.materials,
            coatings: finish.onParts,
          },
          results,
        ),
    ),
    fold: remembering(
      (
        bed: Design['bed'],
        face: Plan['face'],
        keepClears: Design['keepClears'],
        solids: Plan['joinery']['solids'],
      ) => planFold({ bed, face, keepClears, solids }),
    ),
    fastening: remembering(
      (
        bed: Design['bed'],
        keepClears: Plan['keepClears'],
        settings: Design['fastening'],
        face: Plan['face'],
        parts: Plan['layout']['parts'],
        joinery: Plan['joinery'],
        letters: LetterWork,
        stocks: Plan['stocks'],
        masses: Plan['load']['byPart'],
        tables: Tables,
      ) => {
        const glue = tables.glues[0] ?? null;
        const input = {
          bed,
          face,
          keepClears,
          parts,
          solids: joinery.solids,
          pieces: joinery.pieces,
          stocks: [...stocks.values()],
          masses,
          settings,
          brad: tables.brads.find((b) => b.id === settings.brad) ?? null,
          screw: tables.screws.find((s) => s.id === settings.screw) ?? null,
          glue,
        };
        return withLetterGlue(planFastening(input, fasteningMemory), letters, glue);
      },
    ),
    marks: remembering(
      (
        parts: Plan['layout']['parts'],
        joinery: Plan['joinery'],
        rules: Design['rules'],
        measure: Design['measure'],
        finish: FinishPlan,
      ) =>
        planMarks(
          {
            parts,
            solids: joinery.solids,
            joints: joinery.joints,
            pieces: joinery.pieces,
            rules,
            measure,
            paints: finish.jobs,
            bare: finish.bare,
          },
          results,
        ),
    ),
    patterns: createPatternStage(),
  };
}

/** Patterns are remembered one by one, by what stands on them. */
function createPatternStage() {
  const textOf = textByContent();
  const setupOf = remembering(
    (
      paper: Tables['papers'][number],
      pages: Design['pages'],
      correction: Supplies['correction'],
      measure: Design['measure'],
      language: Supplies['language'],
      name: string,
    ): PageSetup => ({
      paper,
      pages,
      correction,
      measure: styleIn(language, measure),
      words: PLAN_WORDS[language].patterns,
      design: name,
    }),
  );
  let latest = new Map<string, PatternRequest>();
  const planned = rememberingEach((text: string, setup: PageSetup): PatternPlan => {
    const request = latest.get(text);
    if (!request) throw new Error('a pattern that was asked for expected');
    return planPattern(request, setup);
  });
  return remembering(
    (
      design: Design,
      face: Plan['face'],
      parts: Plan['layout']['parts'],
      signs: readonly SignPlan[],
      sticks: Plan['marks']['sticks'],
      supplies: Supplies,
      stocks: Plan['stocks'],
    ) => {
      const paper = supplies.tables.papers.find((p) => p.id === design.pages.paper);
      const { language } = supplies;
      const say = sayFor({ design, stocks, language });
      if (!paper) {
        const figures = { paper: design.pages.paper };
        const check: Check = { code: 'patterns.unknown-paper', severity: 'error', parts: [], figures };
        return { sets: [], checks: [check] };
      }
      const setup = setupOf(paper, design.pages, supplies.correction, design.measure, language, design.name);
      const requests = patternRequests({
        design,
        face,
        parts,
        signs,
        sticks,
        measure: setup.measure,
        nameOf: say.name,
        finishOf: say.finish,
      });
      latest = new Map(requests.map((request) => [textOf(request), request]));
      const plans = requests.map((request) => planned.of(textOf(request), setup));
      planned.sweep();
      return joined(plans);
    },
  );
}
