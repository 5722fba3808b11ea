import type { Design } from '../../../design/schema.ts';
import { faceDrawing } from '../../../output/drawings.ts';
import { unwrittenWords } from '../../../output/files.ts';
import { type FaceFigures, faceFigures, sideBySide } from '../../../output/packet/sideBySide.ts';
import { svgOf } from '../../../output/svg/svg.ts';
import type { PrinterCorrection } from '../../../patterns/result.ts';
import { plan } from '../../../plan/plan.ts';
import type { Plan } from '../../../plan/types.ts';
import type { Language } from '../../../plan/words/languages.ts';
import { offer } from '../../planning/alive.ts';
import { suppliesOf } from '../../planning/supplies.ts';
import { lettersFor } from '../../shipped/letters.ts';

/** Plans stay here: what is shown of them is small. */
const planned = new Map<string, Plan>();

/** Plans faces to set beside each other, and writes their sheet. */
const work = {
  async plan(
    key: string,
    design: Design,
    correction: PrinterCorrection,
    language: Language,
  ): Promise<{ readonly figures: FaceFigures; readonly picture: string }> {
    const made = plan(design, await suppliesOf(design, correction, language));
    planned.set(key, made);
    return { figures: faceFigures(made), picture: svgOf(faceDrawing(made)) };
  },

  /** The sheet of faces that were planned, and what has to be read before it is printed. */
  async sheet(
    faces: readonly { readonly key: string; readonly name: string }[],
  ): Promise<{ readonly bytes: Uint8Array; readonly warnings: readonly string[] } | null> {
    const [first, ...others] = faces.flatMap(({ key, name }) => {
      const made = planned.get(key);
      return made ? [{ name, plan: made }] : [];
    });
    if (!first) return null;
    const all = [first, ...others] as const;
    // Names of paints stand on it too.
    const letters = await lettersFor(JSON.stringify(all.map(({ name, plan: { design } }) => [name, design])));
    const warnings = all.flatMap((face) => unwrittenWords(face.plan, letters.scripts));
    return { bytes: await sideBySide(all, letters), warnings: [...new Set(warnings)] };
  },
};

export type BesideWork = typeof work;

offer(work);
