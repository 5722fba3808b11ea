import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

export const sameShape: RuleShape<RuleOf<'same'>> = {
  pulled: 'size',
  squeezes: true,
  slots: { parts: { is: 'parts', role: 'share', least: 2, carried: 'all' } },
};
