import { expose } from 'comlink';
import type { Design } from '../design/schema.ts';
import { castShadows, type ShadowArea } from '../finish/shadow.ts';
import type { PrinterCorrection } from '../patterns/result.ts';
import { createPlanner } from '../plan/plan.ts';
import type { Plan } from '../plan/types.ts';
import type { Language } from '../plan/words/languages.ts';
import { fontBytes } from './fonts.ts';
import { reuse } from './state/reuse.ts';
import { tablesFor } from './state/shipped.ts';

const planner = createPlanner();
let lastPlan: Plan | null = null;
let last: { readonly design: Design; readonly correction: PrinterCorrection } | null = null;
const fonts = new Map<string, Uint8Array>();

/** What the editor asks of the worker. One planner lives here and remembers what did not change. */
const work = {
  async plan(
    sent: Design,
    sentCorrection: PrinterCorrection,
    language: Language,
    onStage: (stage: string, share: number) => void,
  ): Promise<Plan> {
    const design = reuse(last?.design, sent);
    const correction = reuse(last?.correction, sentCorrection);
    last = { design, correction };
    const wanted = new Set(design.parts.flatMap((p) => (p.kind === 'sign' ? [p.lettering.font] : [])));
    for (const id of wanted) {
      if (fonts.has(id)) continue;
      const bytes = await fontBytes(id);
      if (bytes) fonts.set(id, bytes);
    }
    lastPlan = planner(
      design,
      { tables: tablesFor(language), fonts, correction, language },
      { onStage: (stage, done, of) => onStage(stage, done / of) },
    );
    return lastPlan;
  },

  /** Shadows on the face of the last plan, under the design's light. */
  shadows(): readonly ShadowArea[] {
    if (!lastPlan) return [];
    const { joinery, sawnLetters, face, finish, design } = lastPlan;
    return castShadows([...joinery.solids, ...sawnLetters], face.levels, finish.shown, design.light);
  },
};

export type Work = typeof work;

expose(work);
