import type { Design } from '../design/schema.ts';
import type { PageSetup } from '../patterns/paper.ts';
import type { Supplies } from './types.ts';
import { styleIn } from './words/languages.ts';
import { PLAN_WORDS } from './words/tables.ts';

export interface SetupInput
  extends Pick<Design, 'pages' | 'measure' | 'name'>,
    Pick<Supplies, 'correction' | 'language'> {
  readonly papers: Supplies['tables']['papers'];
}

/** How pages are printed; null where the paper is none of the table. */
export function pageSetup({
  papers,
  pages,
  correction,
  measure,
  language,
  name,
}: SetupInput): PageSetup | null {
  const paper = papers.find((p) => p.id === pages.paper);
  if (!paper) return null;
  const words = PLAN_WORDS[language].patterns;
  return { paper, pages, correction, measure: styleIn(language, measure), words, design: name };
}
