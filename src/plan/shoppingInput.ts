import type { Cutting } from '../cutting/result.ts';
import type { Design } from '../design/schema.ts';
import type { FasteningPlan } from '../fastening/result.ts';
import type { FinishPlan } from '../finish/result.ts';
import type { Layout } from '../layout/laid.ts';
import type { Stock, Tables } from '../materials/types.ts';
import type { PatternSet } from '../patterns/result.ts';
import type { Language } from './words/languages.ts';

/** All that the shopping list is made from. */
export interface ShoppingInput {
  readonly design: Design;
  /** For the names of what is in no table. */
  readonly language: Language;
  readonly tables: Tables;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly layout: Layout;
  readonly cutting: Cutting;
  readonly finish: FinishPlan;
  readonly fastening: FasteningPlan;
  readonly patterns: readonly PatternSet[];
}
