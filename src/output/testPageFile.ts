import type { PageSetup } from '../patterns/paper.ts';
import { testPage } from '../patterns/testPage.ts';
import type { Language } from '../plan/words/languages.ts';
import type { Letters } from './pdf/letters.ts';
import { pdfOf } from './pdf/pdf.ts';

/** The page to measure a printer by, as a PDF of the design's date; null where its paper leaves no room for one. */
export async function testPageFile(
  setup: PageSetup | null,
  { date, language }: { readonly date: string; readonly language: Language },
  letters: Letters,
): Promise<Uint8Array | null> {
  const drawing = setup && testPage(setup)?.drawing;
  if (!drawing) return null;
  const page = { width_mm: drawing.width, height_mm: drawing.height, drawing };
  return pdfOf([page], { title: drawing.title, date, language }, letters);
}
