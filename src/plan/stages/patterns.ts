import type { Check } from '../../check/check.ts';
import type { Stock } from '../../materials/types.ts';
import type { PageSetup } from '../../patterns/paper.ts';
import { joined, marginChecks, planPattern } from '../../patterns/planPatterns.ts';
import type { PatternPlan, PatternSet } from '../../patterns/result.ts';
import { patternRequests, type RequestInput } from '../patternRequests.ts';
import type { Supplies } from '../types.ts';
import { sayFor } from '../words/say.ts';
import type { PlanMemory } from './memory.ts';

type PatternInput = Pick<
  RequestInput,
  'design' | 'face' | 'parts' | 'pieces' | 'signs' | 'seams' | 'sticks' | 'fastened' | 'tables'
> & {
  readonly supplies: Supplies;
  readonly stocks: ReadonlyMap<string, Stock>;
  /** Null where the paper is none of the table. */
  readonly setup: PageSetup | null;
};

/** All that is printed full size, and what is wrong with it. */
export interface PatternsFound {
  readonly sets: readonly PatternSet[];
  readonly checks: readonly Check[];
  readonly setup: PageSetup | null;
  /** Each pattern by what stands on it: the next ones are made from them. */
  readonly byText: ReadonlyMap<string, PatternPlan>;
}

/** All patterns; those of the last plan are taken where what stands on them, and the pages, are the same. */
export function planPatterns(
  { supplies, stocks, setup, ...about }: PatternInput,
  last: PatternsFound | undefined,
  { textOf }: Pick<PlanMemory, 'textOf'>,
): PatternsFound {
  const { design } = about;
  if (!setup) {
    const figures = { paper: design.pages.paper };
    const check: Check = { code: 'patterns.unknown-paper', severity: 'error', parts: [], figures };
    return { sets: [], checks: [check], setup, byText: new Map() };
  }
  const say = sayFor({ design, stocks, language: supplies.language });
  const { measure, words } = setup;
  const requests = patternRequests({ ...about, measure, words, nameOf: say.name, finishOf: say.finish });
  const known = last?.setup === setup ? last.byText : null;
  const byText = new Map<string, PatternPlan>();
  const plans = requests.map((request) => {
    const text = textOf(request);
    const plan = byText.get(text) ?? known?.get(text) ?? planPattern(request, setup);
    byText.set(text, plan);
    return plan;
  });
  const { sets, checks } = joined(plans);
  return { sets, checks: sets.length > 0 ? [...marginChecks(setup), ...checks] : checks, setup, byText };
}
