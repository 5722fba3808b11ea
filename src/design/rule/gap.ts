import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

export const gapShape: RuleShape<RuleOf<'gap'>> = {
  pulled: 'edge',
  slots: {
    edge: { is: 'edge', role: 'follow', by: 'from' },
    from: { is: 'edge', role: 'lead' },
    likeEdge: { is: 'edge', role: 'lead' },
    likeFrom: { is: 'edge', role: 'lead' },
  },
  drawn: 'distance',
  rooms: ({ axis, from, edge }) => [{ key: '', axis, from: [from], to: [edge] }],
};
