import { planFastening } from '../../fastening/planFastening.ts';
import { planFinish } from '../../finish/planFinish.ts';
import { planFold } from '../../fold/planFold.ts';
import { planJoinery } from '../../joinery/joinery.ts';
import { kept } from '../../layout/changes.ts';
import { paintedLayers } from '../../lettering/painted.ts';
import { planLoad } from '../../load/planLoad.ts';
import { planMarks } from '../../marks/planMarks.ts';
import { gluing } from '../gluing.ts';
import { planLetters, withLetterGlue, withLetters } from '../letters.ts';
import { reuse } from '../reuse.ts';
import { shoppingList } from '../shopping.ts';
import { FACE_STAGES } from './face.ts';
import type { PlanFacts, PlanGiven } from './facts.ts';
import { type Stages, stage } from './stage.ts';

type Known = PlanGiven & PlanFacts;
type StagesFor<N extends keyof PlanFacts> = Stages<Known, Pick<PlanFacts, N>>;

const lettering: StagesFor<'lettering'> = {
  lettering: stage(
    ({ layout, design, supplies, memory }) => ({
      ...{ parts: layout.parts, fonts: design.fonts, supplies, letter: memory.signs },
    }),
    ({ parts, fonts, supplies, letter }, last) => {
      const { signs, checks } = letter(parts, fonts, supplies);
      return { signs: kept(last?.signs, signs), checks };
    },
  ),
};

const joinery: StagesFor<'joined' | 'letters' | 'joinery' | 'standing' | 'fixed'> = {
  joined: stage(
    ({ layout, stocks, design: { joints, shop, measure }, memory }) => ({
      ...{ parts: layout.parts, joints, stocks, shop, measure, results: memory.joinery },
    }),
    // Lists come out whole; what is in them the same stays the same, so that later stages know it again.
    ({ results, ...input }, last) => {
      const now = planJoinery(input, results);
      return { ...now, pieces: reuse(last?.pieces, now.pieces), solids: reuse(last?.solids, now.solids) };
    },
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
    ({ layout, joined }) => ({ parts: layout.parts, gone: joined.gone }),
    ({ parts, gone }) => (gone.size === 0 ? parts : parts.filter(({ id }) => !gone.has(id))),
  ),
};

const cutting: StagesFor<'cutting'> = {
  cutting: (known, last) =>
    stage(cuttingInput, (input) => known.memory.cutting.of(known.watch, input))(known, last),
};

const finish: StagesFor<'finish'> = {
  finish: stage(
    ({ looks, face, layout, joined, lettering, letters, design, stocks, materials, supplies, memory }) => ({
      ...{ parts: layout.parts, solids: joined.solids, joints: joined.joints, signs: lettering.signs },
      ...{ face, looks, sawn: letters.solids, finishes: design.finishes, paint: design.paint },
      ...{ stocks, materials, containers: supplies.tables.containers, memory: memory.finish },
    }),
    ({ parts, joints, signs, memory, ...more }) => {
      const letters = signs.map((s) => ({
        sign: s.id,
        at: s.at,
        layers: paintedLayers(s.lettered, s.cutOuts.length > 0, s.stencils),
      }));
      return planFinish({ ...more, ...gluing(parts, joints), lettering: letters }, memory);
    },
  ),
};

const load: StagesFor<'load'> = {
  load: stage(
    ({ design, face, standing, layout, stocks, tables, finish, memory }) => ({
      ...{ bed: design.bed, face, limits: design.load, solids: standing, parts: layout.parts },
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

const fastening: StagesFor<'fastening'> = {
  fastening: stage(
    ({ design, keepClears, face, fixed, joined, letters, stocks, load, tables, memory }) => ({
      ...{ bed: design.bed, keepClears, settings: design.fastening, face, parts: fixed },
      ...{ solids: joined.solids, pieces: joined.pieces, letters, byId: stocks, masses: load.byPart },
      ...{ brads: tables.brads, screws: tables.screws, glues: tables.glues, memory: memory.fastening },
    }),
    ({ letters, byId, brads, screws, glues, memory, ...more }) => {
      const glue = glues[0] ?? null;
      const brad = brads.find((b) => b.id === more.settings.brad) ?? null;
      const screw = screws.find((s) => s.id === more.settings.screw) ?? null;
      const input = { ...more, stocks: [...byId.values()], brad, screw, glue };
      return withLetterGlue(planFastening(input, memory), letters, glue);
    },
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

const patterns: StagesFor<'patterns'> = {
  patterns: stage(
    ({ design, face, layout, joined, lettering, marks, supplies, stocks, memory }) => ({
      ...{ design, face, parts: layout.parts, pieces: joined.pieces },
      ...{ signs: lettering.signs, sticks: marks.sticks },
      ...{ supplies, stocks, draw: memory.patterns },
    }),
    ({ draw, ...more }) => draw(more),
  ),
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

/** What boards and sheets follow from. */
export const cuttingInput = ({ joinery, stocks, design, nodes }: Known) => ({
  ...{ pieces: joinery.pieces, stocks, owned: design.owned, shop: design.shop, nodes },
});

/** The plan from the design to the shopping list, by the names that are told while it runs. */
export const PLAN_STAGES: Readonly<Record<string, Partial<Stages<Known, PlanFacts>>>> = {
  layout: FACE_STAGES,
  lettering,
  joinery,
  cutting,
  finish,
  load,
  fold,
  fastening,
  marks,
  patterns,
  shopping,
};
