import { FARTHEST } from '../limits.ts';
import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

export const betweenShape: RuleShape<RuleOf<'between'>> = {
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
  half: ({ id, axis, part, insetLow, insetHigh, ...edges }, side): RuleOf<'set'> => {
    const distance = side === 'low' ? insetLow : -insetHigh;
    return { id, kind: 'set', axis, edge: { of: part, side }, from: edges[side], distance };
  },
};
