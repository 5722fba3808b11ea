import { fontsIn } from '../../design/look.ts';
import { isLettered } from '../../design/made.ts';
import type { Design } from '../../design/schema.ts';
import { needsShaper } from '../../lettering/script.ts';
import type { PrinterCorrection } from '../../patterns/result.ts';
import type { Supplies } from '../../plan/types.ts';
import type { Language } from '../../plan/words/languages.ts';
import { fontBytes } from '../shipped/fonts.ts';
import { shaperAtHand } from '../shipped/shaper.ts';
import { tablesFor } from '../shipped/shipped.ts';

const fonts = new Map<string, Uint8Array>();

/** The bytes of a font, fetched when it is first asked for. */
export async function fontOf(id: string): Promise<Uint8Array | null> {
  const bytes = fonts.get(id) ?? (await fontBytes(id));
  if (bytes) fonts.set(id, bytes);
  return bytes;
}

/** What a worker plans a design with: the tables, and the fonts that its letters ask for. */
export async function suppliesOf(
  design: Design,
  correction: PrinterCorrection,
  language: Language,
): Promise<Supplies> {
  const letterings = design.parts.filter(isLettered).map(({ lettering }) => lettering);
  const wanted = new Set(letterings.flatMap(fontsIn));
  for (const id of wanted) await fontOf(id);
  const shaper = needsShaper(letterings) ? await shaperAtHand() : null;
  return { tables: tablesFor(language), fonts, shaper, correction, language };
}
