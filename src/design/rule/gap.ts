import { z } from 'zod';
import { axis, edgeSchema, type Immutable, id } from '../field.ts';
import type { RuleShape } from './kind.ts';

/** `edge` stands as far beyond `from` as `likeEdge` beyond `likeFrom`: the gap that a row has, once more. */
export const gapSchema = z.strictObject({
  id,
  kind: z.literal('gap'),
  axis,
  edge: edgeSchema,
  from: edgeSchema,
  likeEdge: edgeSchema,
  likeFrom: edgeSchema,
});

export const gapShape: RuleShape<Immutable<z.infer<typeof gapSchema>>> = {
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
