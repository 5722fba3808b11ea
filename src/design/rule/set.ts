import { z } from 'zod';
import { axis, edgeSchema, FARTHEST, type Immutable, id, length } from '../field.ts';
import type { RuleShape } from './kind.ts';

/** `edge` stands `distance` beyond `from` (positive: right or up). */
export const setSchema = z.strictObject({
  id,
  kind: z.literal('set'),
  axis,
  edge: edgeSchema,
  from: edgeSchema,
  distance: length,
});

export type SetRule = Immutable<z.infer<typeof setSchema>>;

export const setShape: RuleShape<SetRule> = {
  pulled: 'edge',
  slots: {
    edge: { is: 'edge', role: 'follow', by: 'from' },
    from: { is: 'edge', role: 'lead', turns: true },
    distance: { is: 'measure', least: -FARTHEST, follows: true, quiet: true },
  },
  drawn: 'distance',
  rooms: ({ axis, from, edge }) => [{ key: '', axis, from: [from], to: [edge], measure: 'distance' }],
};
