import { isLettered } from '../../design/made.ts';
import type { Design } from '../../design/schema.ts';
import { castShadows, type ShadowArea } from '../../finish/shadow.ts';
import type { LaidPart } from '../../layout/laid.ts';
import type { PrinterCorrection } from '../../patterns/result.ts';
import { createPlanner } from '../../plan/plan.ts';
import { reuse } from '../../plan/reuse.ts';
import type { Plan } from '../../plan/types.ts';
import type { Language } from '../../plan/words/languages.ts';
import { fontBytes } from '../shipped/fonts.ts';
import { tablesFor } from '../shipped/shipped.ts';
import { offer } from './alive.ts';
import { letterPictures } from './letterPictures.ts';

const planner = createPlanner();
let lastPlan: Plan | null = null;
let last: { readonly design: Design; readonly correction: PrinterCorrection } | null = null;
const fonts = new Map<string, Uint8Array>();

/** The bytes of a font, fetched when it is first asked for. */
async function fontOf(id: string): Promise<Uint8Array | null> {
  const bytes = fonts.get(id) ?? (await fontBytes(id));
  if (bytes) fonts.set(id, bytes);
  return bytes;
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
    const design = reuse(last?.design, sent);
    const correction = reuse(last?.correction, sentCorrection);
    last = { design, correction };
    const wanted = new Set(design.parts.filter(isLettered).map((p) => p.lettering.font));
    for (const id of wanted) await fontOf(id);
    lastPlan = planner(
      design,
      { tables: tablesFor(language), fonts, correction, language },
      { onStage: (stage, done, of) => onStage(stage, done / of), onDraft: onDraft ?? undefined },
    );
    return lastPlan;
  },

  /** The lettering of signs by itself, without a plan. */
  letters: (parts: readonly LaidPart[], pictures: Design['pictures']) =>
    letterPictures(parts, pictures, fontOf),

  /** Shadows on the face of the last plan, under the design's light. */
  shadows(): readonly ShadowArea[] {
    if (!lastPlan) return [];
    const { joinery, sawnLetters, face, finish, design } = lastPlan;
    return castShadows([...joinery.solids, ...sawnLetters], face.levels, finish.shown, design.light);
  },
};

export type Work = typeof work;

offer(work);
