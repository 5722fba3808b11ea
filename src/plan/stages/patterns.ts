import type { Check } from '../../check/check.ts';
import type { Stock } from '../../materials/types.ts';
import type { PageSetup } from '../../patterns/paper.ts';
import { joined, marginChecks, type PatternRequest, planPattern } from '../../patterns/planPatterns.ts';
import type { PatternPlan, PatternSet } from '../../patterns/result.ts';
import { pageSetup, type SetupInput } from '../pageSetup.ts';
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
};

/** Patterns by what stands on them. */
export type ByText = ReadonlyMap<string, PatternPlan>;

/** What can be printed full size before all is known, and on what: for whoever plans it meanwhile. */
export interface PatternWork {
  readonly requests: readonly PatternRequest[];
  readonly page: SetupInput;
}

const requestsOf = ({ supplies, stocks, ...about }: PatternInput, { measure, words }: PageSetup) => {
  const say = sayFor({ design: about.design, stocks, language: supplies.language });
  return patternRequests({ ...about, measure, words, nameOf: say.name, finishOf: say.finish });
};

/** The page is the one that patterns of this plan are made for. */
export function patternWork(input: PatternInput, page: SetupInput): PatternWork {
  const setup = pageSetup(page);
  return { requests: setup ? requestsOf(input, setup) : [], page };
}

/** Each pattern of the work; `begins` is told of it before. */
export function plansOf({ requests, page }: PatternWork, begins: () => void): readonly PatternPlan[] {
  const setup = pageSetup(page);
  return requests.flatMap((request) => {
    begins();
    return setup ? [planPattern(request, setup)] : [];
  });
}

/** All that is printed full size, and what is wrong with it. */
export interface PatternsFound {
  readonly sets: readonly PatternSet[];
  readonly checks: readonly Check[];
  readonly setup: PageSetup | null;
  /** Each pattern by what stands on it: the next ones are made from them. */
  readonly byText: ByText;
}

/**
 * All patterns; those of the last plan are taken where what stands on them, and the pages, are the same.
 *
 * @param setup null where the paper is none of the table
 * @param begun those of the work that somebody else has done
 */
export function planPatterns(
  { setup, ...input }: PatternInput & { readonly setup: PageSetup | null },
  last: PatternsFound | undefined,
  { textOf }: Pick<PlanMemory, 'textOf'>,
  begun: ByText = new Map(),
): PatternsFound {
  if (!setup) {
    const figures = { paper: input.design.pages.paper };
    const check: Check = { code: 'patterns.unknown-paper', severity: 'error', parts: [], figures };
    return { sets: [], checks: [check], setup, byText: new Map() };
  }
  const known = last?.setup === setup ? last.byText : begun;
  const byText = new Map<string, PatternPlan>();
  const plans = requestsOf(input, setup).map((request) => {
    const text = textOf(request);
    const plan = byText.get(text) ?? known.get(text) ?? planPattern(request, setup);
    byText.set(text, plan);
    return plan;
  });
  const { sets, checks } = joined(plans);
  return { sets, checks: sets.length > 0 ? [...marginChecks(setup), ...checks] : checks, setup, byText };
}
