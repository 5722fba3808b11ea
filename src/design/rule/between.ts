import { z } from 'zod';
import { axis, edgeSchema, FARTHEST, type Immutable, id, length, partId } from '../field.ts';
import type { RuleShape } from './kind.ts';
import type { SetRule } from './set.ts';

/** The part runs from `low` to `high`, held back by an inset at each end. */
export const betweenSchema = z.strictObject({
  id,
  kind: z.literal('between'),
  axis,
  part: partId,
  low: edgeSchema,
  high: edgeSchema,
  insetLow: length,
  insetHigh: length,
});

export type BetweenRule = Immutable<z.infer<typeof betweenSchema>>;

export const betweenShape: RuleShape<BetweenRule> = {
  pulled: 'half',
  squeezes: true,
  slots: {
    part: { is: 'part', role: 'follow' },
    low: { is: 'edge', role: 'lead', turns: true },
    high: { is: 'edge', role: 'lead', turns: true },
    insetLow: { is: 'measure', least: -FARTHEST, follows: true },
    insetHigh: { is: 'measure', least: -FARTHEST, follows: true },
  },
  drawn: 'gap',
  rooms: ({ axis, part, low, high }) => [
    { key: '-low', axis, from: [low], to: [{ of: part, side: 'low' }], measure: 'insetLow' },
    { key: '-high', axis, from: [{ of: part, side: 'high' }], to: [high], measure: 'insetHigh' },
  ],
  half: ({ id, axis, part, insetLow, insetHigh, ...edges }, side): SetRule => {
    const distance = side === 'low' ? insetLow : -insetHigh;
    return { id, kind: 'set', axis, edge: { of: part, side }, from: edges[side], distance };
  },
};
