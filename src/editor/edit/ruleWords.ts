import type { WordKey } from '../words/t.ts';

/** What the measures and choices of rules are called, by their fields. */
export const RULE_WORDS = {
  distance: 'rule.distance',
  insetLow: 'rule.insetLow',
  insetHigh: 'rule.insetHigh',
  margin: 'rule.margin',
  gap: 'rule.gap',
  mode: 'array.spacing',
  pitch: 'array.pitch',
  most: 'array.most',
} as const satisfies Readonly<Record<string, WordKey>>;

/** What a field of a rule is called. Every measure and choice has a name: `tests/kinds.test.ts` asks each. */
export const ruleWord = (field: string): WordKey => RULE_WORDS[field as keyof typeof RULE_WORDS];
