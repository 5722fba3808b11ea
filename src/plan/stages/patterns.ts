import type { Check } from '../../check/check.ts';
import type { Design } from '../../design/schema.ts';
import { shapeMemory } from '../../geometry/shapeMemory.ts';
import type { Stock } from '../../materials/types.ts';
import type { PageSetup } from '../../patterns/paper.ts';
import { joined, type PatternRequest, planPattern } from '../../patterns/planPatterns.ts';
import type { PatternPlan, PatternSet } from '../../patterns/result.ts';
import { remembering, rememberingEach, textByContent } from '../memory.ts';
import { patternRequests, type RequestInput } from '../patternRequests.ts';
import type { Supplies } from '../types.ts';
import { styleIn } from '../words/languages.ts';
import { sayFor } from '../words/say.ts';
import { PLAN_WORDS } from '../words/tables.ts';

type PatternInput = Pick<RequestInput, 'design' | 'face' | 'parts' | 'pieces' | 'signs' | 'sticks'> & {
  readonly supplies: Supplies;
  readonly stocks: ReadonlyMap<string, Stock>;
};

/** All that is printed full size, and what is wrong with it. */
export interface PatternsFound {
  readonly sets: readonly PatternSet[];
  readonly checks: readonly Check[];
}

/** Pages whose places are kept: more than the largest design has. */
const MOST_PAGES = 1000;

/** Patterns are remembered one by one, by what stands on them; where square and ruler stand, page by page. */
export function createPatternPlanner() {
  const textOf = textByContent();
  const setupOf = remembering(
    (
      paper: PageSetup['paper'],
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
  const places = shapeMemory(MOST_PAGES);
  let latest = new Map<string, PatternRequest>();
  const planned = rememberingEach((text: string, setup: PageSetup): PatternPlan => {
    const request = latest.get(text);
    if (!request) throw new Error('a pattern that was asked for expected');
    return planPattern(request, setup, places);
  });
  return ({ supplies, stocks, ...about }: PatternInput): PatternsFound => {
    const { design } = about;
    const { language } = supplies;
    const paper = supplies.tables.papers.find((p) => p.id === design.pages.paper);
    if (!paper) {
      const figures = { paper: design.pages.paper };
      const check: Check = { code: 'patterns.unknown-paper', severity: 'error', parts: [], figures };
      return { sets: [], checks: [check] };
    }
    const say = sayFor({ design, stocks, language });
    const setup = setupOf(paper, design.pages, supplies.correction, design.measure, language, design.name);
    const requests = patternRequests({
      ...about,
      measure: setup.measure,
      nameOf: say.name,
      finishOf: say.finish,
    });
    const texts = requests.map(textOf);
    latest = new Map(requests.map((request, i) => [texts[i] ?? '', request]));
    const plans = texts.map((text) => planned.of(text, setup));
    planned.sweep();
    return joined(plans);
  };
}
