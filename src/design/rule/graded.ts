import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

export const gradedShape: RuleShape<RuleOf<'graded'>> = {
  pulled: 'place',
  squeezes: true,
  slots: {
    parts: { is: 'parts', role: 'follow', least: 1, beside: 'ratio', carried: 'nothing' },
    low: { is: 'edge', role: 'lead' },
    high: { is: 'edge', role: 'lead' },
    ratio: { is: 'plain' },
    gap: { is: 'measure', least: 0 },
  },
};
