import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

export const mirrorShape: RuleShape<RuleOf<'mirror'>> = {
  both: true,
  pulled: 'place',
  squeezes: true,
  slots: {
    part: { is: 'part', role: 'lead' },
    twin: { is: 'part', role: 'follow', by: 'part' },
    about: { is: 'edge', role: 'lead' },
  },
};
