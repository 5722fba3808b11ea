import type { FontFeature } from '../../../lettering/font/layout.ts';
import type { Proportion } from '../../../lettering/legibility.ts';

/** What is told of a font. */
export interface FontFacts {
  readonly proportions: readonly Proportion[];
  readonly features: readonly FontFeature[];
}

export const NO_FACTS: FontFacts = { proportions: [], features: [] };
