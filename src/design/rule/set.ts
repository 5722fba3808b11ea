import { FARTHEST } from '../limits.ts';
import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

export const setShape: RuleShape<RuleOf<'set'>> = {
  pulled: 'edge',
  slots: {
    edge: { is: 'edge', role: 'follow', by: 'from' },
    from: { is: 'edge', role: 'lead', turns: true },
    distance: { is: 'measure', least: -FARTHEST, follows: true, quiet: true },
  },
  drawn: 'distance',
  rooms: ({ axis, from, edge }) => [{ key: '', axis, from: [from], to: [edge], measure: 'distance' }],
};
