import type { Design } from '../../design/schema.ts';
import type { ShadowArea } from '../../finish/shadow.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { shadowsOn } from '../../output/picture/shadows.ts';
import type { PrinterCorrection } from '../../patterns/result.ts';
import { createPlanner } from '../../plan/plan.ts';
import { reuse } from '../../plan/reuse.ts';
import type { Plan, Supplies } from '../../plan/types.ts';
import type { Language } from '../../plan/words/languages.ts';
import { shaperAtHand } from '../shipped/shaper.ts';
import { offer } from './alive.ts';
import { letterPictures } from './letterPictures.ts';
import { practiceOf } from './practice.ts';
import { fontOf, suppliesOf } from './supplies.ts';

const planner = createPlanner();
let asking: ReturnType<typeof createPlanner> | null = null;
let lastPlan: Plan | null = null;
let last: { readonly design: Design; readonly correction: PrinterCorrection } | null = null;
/** Before each step of the practice: whatever else is asked for comes in between. */
const PAUSE_MS = 200;
/** What takes longer has run much of the code often, and an edit would have to wait for the next step. */
const LONG_MS = 800;
/** How often a plan was asked for; and whether it was practiced. */
let asked = 0;
let practiced = false;

/** While the person looks at the first plan, edits like those to come are planned and nothing is made of them. */
async function practice(design: Design, supplies: Supplies): Promise<void> {
  const edits = practiceOf(design);
  if (practiced || edits.length === 0) return;
  practiced = true;
  const of = asked;
  // The design itself once more: the next edit is one of it.
  for (const edited of [...edits, design]) {
    await new Promise((done) => setTimeout(done, PAUSE_MS));
    if (asked !== of) return;
    const begun = performance.now();
    try {
      planner(edited, supplies);
    } catch {
      // Of an edit that nobody made nothing is told.
    }
    if (performance.now() - begun > LONG_MS) return;
  }
}

/** What the editor asks of the worker. One planner lives here and remembers what did not change. */
const work = {
  async plan(
    sent: Design,
    sentCorrection: PrinterCorrection,
    language: Language,
    onStage: (stage: string, share: number) => void,
    onDraft: ((plan: Plan) => void) | null,
  ): Promise<Plan> {
    asked++;
    const design = reuse(last?.design, sent);
    const correction = reuse(last?.correction, sentCorrection);
    last = { design, correction };
    const supplies = await suppliesOf(design, correction, language);
    lastPlan = planner(design, supplies, {
      onStage: (stage, done, of) => onStage(stage, done / of),
      onDraft: onDraft ?? undefined,
    });
    void practice(design, supplies);
    return lastPlan;
  },

  /** What a design would cost; by a planner of its own, so that the next edit finds what it knows. */
  async cost(design: Design, correction: PrinterCorrection, language: Language): Promise<number> {
    asking ??= createPlanner();
    return asking(design, await suppliesOf(design, correction, language)).total;
  },

  /** The lettering of signs by itself, without a plan. */
  letters: (parts: readonly LaidPart[], pictures: Design['pictures']) =>
    letterPictures(parts, pictures, fontOf, shaperAtHand),

  /** Shadows on the face of the last plan, under the design's light. */
  shadows(): readonly ShadowArea[] {
    return lastPlan ? shadowsOn(lastPlan) : [];
  },
};

export type Work = typeof work;

offer(work);
