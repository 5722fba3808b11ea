import type { WordKey } from '../words/t.ts';

/** What the measures and choices of rules are called, by their fields. */
export const RULE_WORDS: Readonly<Record<string, WordKey>> = {
  distance: 'rule.distance',
  insetLow: 'rule.insetLow',
  insetHigh: 'rule.insetHigh',
  margin: 'rule.margin',
  gap: 'rule.gap',
  mode: 'array.spacing',
  pitch: 'array.pitch',
  most: 'array.most',
};
