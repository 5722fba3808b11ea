import { liveFacts } from '../../design/job/record.ts';
import { fastenParts, planFastening } from '../../fastening/planFastening.ts';
import type { LetterPaint } from '../../finish/input.ts';
import { knownSurfaces } from '../../finish/memory.ts';
import { planFinish } from '../../finish/planFinish.ts';
import { surfacesOf } from '../../finish/surface.ts';
import { planFold } from '../../fold/planFold.ts';
import { withBoughtPaint } from '../../job/bought.ts';
import { kept } from '../../layout/changes.ts';
import { paintedLayers } from '../../lettering/painted.ts';
import { sameValue } from '../../list/sameValue.ts';
import { planLoad } from '../../load/planLoad.ts';
import { planMarks } from '../../marks/planMarks.ts';
import { cutWithJob, cutWork, stockCuts } from '../cuttingStage.ts';
import { gluing } from '../gluing.ts';
import { planGrounds } from '../ground.ts';
import { planLetters, withLetterGlue, withLetters } from '../letters.ts';
import { pageSetup } from '../pageSetup.ts';
import { shoppingList } from '../shopping.ts';
import { planSigns } from '../signs.ts';
import { FACE_STAGES } from './face.ts';
import type { PlanFacts, PlanGiven } from './facts.ts';
import { type PatternsFound, type PatternWork, patternWork, planPatterns } from './patterns.ts';
import { SAWN_STAGES } from './sawn.ts';
import { type Stages, stage } from './stage.ts';

type Known = PlanGiven & PlanFacts;
type StagesFor<N extends keyof PlanFacts> = Stages<Known, Pick<PlanFacts, N>>;

const lettering: StagesFor<'lettering'> = {
  lettering: stage(
    ({ layout, design, supplies, memory }) => ({
      ...{ parts: layout.parts, fonts: design.fonts, pictures: design.pictures, supplies, memory },
      photos: design.photos,
    }),
    ({ memory, ...input }, last) => {
      const { signs, checks } = planSigns(input, memory.results, memory.letters);
      return { signs: kept(last?.signs, signs), checks };
    },
  ),
};

const joinery: StagesFor<
  'bodies' | 'joined' | 'grounds' | 'letters' | 'joinery' | 'standing' | 'fixed' | 'cuts'
> = {
  ...SAWN_STAGES,
  grounds: stage(
    ({ face, layout, joined, lettering }) => ({
      ...{ levels: face.levels, parts: layout.parts, solids: joined.solids, signs: lettering.signs },
    }),
    planGrounds,
  ),
  letters: stage(
    ({ layout, lettering, stocks, design }) => ({
      ...{ parts: layout.parts, signs: lettering.signs, stocks },
      ...{ kerf: design.shop.sheetKerf, measure: design.measure },
    }),
    planLetters,
  ),
  joinery: stage(
    ({ joined, letters, stocks }) => ({ joined, letters, stocks }),
    ({ joined, letters, stocks }) => withLetters(joined, letters, stocks),
  ),
  standing: stage(
    ({ joined, letters }) => ({ solids: joined.solids, sawn: letters.solids }),
    ({ solids, sawn }) => (sawn.length === 0 ? solids : [...solids, ...sawn]),
  ),
  fixed: stage(
    ({ bodies, joined }) => ({ parts: bodies, gone: joined.gone }),
    ({ parts, gone }) => (gone.size === 0 ? parts : parts.filter(({ id }) => !gone.has(id))),
  ),
  cuts: stage(
    ({ joinery, stocks, design: { owned, shop } }) => ({ pieces: joinery.pieces, stocks, owned, shop }),
    stockCuts,
  ),
};

const cutting: StagesFor<'cutting'> = {
  // Who is told while it runs is none of its inputs.
  cutting: (known, last) =>
    stage(
      (facts: Known) => ({ ...cutWork(facts), results: facts.memory.results }),
      (work) => known.elsewhere?.cutting() ?? cutWithJob(work, { ...work, watch: known.watch }),
    )(known, last),
};

const finish: StagesFor<'painted' | 'surfaces' | 'paints' | 'finish'> = {
  painted: stage(
    ({ lettering }) => ({ signs: lettering.signs }),
    ({ signs }): readonly LetterPaint[] =>
      signs.map((s) => ({
        sign: s.id,
        at: s.at,
        layers: s.printed ? [] : paintedLayers(s.lettered, s.cutOuts.length > 0, s.stencils),
      })),
  ),
  surfaces: stage(
    ({ face, joined, painted, letters }) => ({
      ...{ face, solids: joined.solids, lettering: painted, sawn: letters.solids },
    }),
    (input, last) => knownSurfaces(last ?? [], surfacesOf(input)),
  ),
  paints: stage(
    ({ design: { finishes, job } }) => ({ finishes, job }),
    ({ finishes, job }, last) => {
      const now = withBoughtPaint(finishes, liveFacts(job));
      return last && sameValue(last, now) ? last : now;
    },
  ),
  finish: stage(
    ({ looks, face, bodies, joined, painted, letters, design, paints, stocks, surfaces, ...more }) => ({
      ...{ parts: bodies, solids: joined.solids, joints: joined.joints, lettering: painted },
      ...{ face, looks, sawn: letters.solids, finishes: paints, paint: design.paint },
      ...{ stocks, materials: more.materials, containers: more.tables.containers, surfaces },
      results: more.memory.results,
    }),
    ({ parts, joints, surfaces, results, ...more }) =>
      planFinish({ ...more, ...gluing(parts, joints) }, surfaces, results),
  ),
};

const load: StagesFor<'load'> = {
  load: stage(
    ({ design, face, standing, bodies, stocks, tables, finish, memory }) => ({
      ...{ bed: design.bed, face, limits: design.load, solids: standing, parts: bodies },
      ...{ byId: stocks, materials: tables.materials, coatings: finish.onParts, results: memory.results },
    }),
    ({ byId, results, ...more }) => planLoad({ ...more, stocks: [...byId.values()] }, results),
  ),
};

const fold: StagesFor<'fold'> = {
  fold: stage(
    ({ design, face, standing, memory }) => ({
      ...{ bed: design.bed, face, keepClears: design.keepClears, solids: standing, results: memory.results },
    }),
    ({ results, ...more }) => planFold(more, results),
  ),
};

const fastening: StagesFor<'glue' | 'fastened' | 'fastening'> = {
  glue: stage(
    ({ tables }) => ({ glues: tables.glues }),
    ({ glues }) => glues[0] ?? null,
  ),
  fastened: stage(
    ({ design, keepClears, face, fixed, joined, glue, stocks, load, tables }) => ({
      ...{ bed: design.bed, keepClears, settings: design.fastening, face, parts: fixed },
      ...{ solids: joined.solids, pieces: joined.pieces, byId: stocks, masses: load.byPart },
      ...{ brads: tables.brads, screws: tables.screws, glue },
    }),
    ({ byId, brads, screws, ...more }, last) => {
      const brad = brads.find((b) => b.id === more.settings.brad) ?? null;
      const screw = screws.find((s) => s.id === more.settings.screw) ?? null;
      return fastenParts({ ...more, stocks: [...byId.values()], brad, screw, screws }, last);
    },
  ),
  fastening: stage(
    ({ fastened, letters, glue, layout }) => ({ fastened, letters, glue, parts: layout.parts }),
    ({ fastened, letters, glue, parts }) => withLetterGlue(planFastening(fastened), letters, parts, glue),
  ),
};

const marks: StagesFor<'marks'> = {
  marks: stage(
    ({ fixed, joined: { solids, joints, pieces }, design, finish, memory }) => ({
      ...{ parts: fixed, solids, joints, pieces, rules: design.rules, measure: design.measure },
      ...{ paints: finish.jobs, bare: finish.bare, results: memory.results },
    }),
    ({ results, ...more }) => planMarks(more, results),
  ),
};

const pageOf = ({ design: { pages, measure, name }, tables, supplies }: Known): PatternWork['page'] => ({
  ...{ papers: tables.papers, pages, measure, name },
  ...{ correction: supplies.correction, language: supplies.language },
});

/** What is printed once all is joined: pieces without letters, which stand on their signs. */
const printedOf = ({ layout, joined, lettering, grounds, ...known }: Known) => ({
  ...{ design: known.design, face: known.face, tables: known.tables },
  ...{ parts: layout.parts, pieces: joined.pieces, signs: lettering.signs, seams: grounds.seams },
  ...{ supplies: known.supplies, stocks: known.stocks },
});

/** The work of the printer that can be done once all is joined. */
export const patternWorkOf = (known: Known): PatternWork => patternWork(printedOf(known), pageOf(known));

const patterns: StagesFor<'pages' | 'patterns'> = {
  pages: stage(pageOf, pageSetup),
  patterns: (known, last) =>
    stage(
      (facts: Known) => ({
        ...printedOf(facts),
        ...{ fastened: facts.fastening.parts, sticks: facts.marks.sticks, setup: facts.pages },
        memory: facts.memory,
      }),
      ({ memory, ...input }, before: PatternsFound | undefined) =>
        planPatterns(input, before, memory, known.elsewhere?.patterns()),
    )(known, last),
};

const shopping: StagesFor<'shopping'> = {
  shopping: stage(
    ({ design, supplies, tables, stocks, layout, cutting, finish, fastening, patterns }) => ({
      ...{ design, language: supplies.language, tables, stocks, layout, cutting, finish, fastening },
      patterns: patterns.sets,
    }),
    (input): PlanFacts['shopping'] => shoppingList(input),
  ),
};

/**
 * The plan from the design to the shopping list, by the names that are told while it runs. Boards and sheets come late:
 * what they come to may be found soon and bettered (a draft), or elsewhere meanwhile.
 */
export const PLAN_STAGES = {
  layout: FACE_STAGES,
  lettering,
  joinery,
  finish,
  load,
  fold,
  marks,
  fastening,
  patterns,
  cutting,
  shopping,
} satisfies Readonly<Record<string, Partial<Stages<Known, PlanFacts>>>>;
