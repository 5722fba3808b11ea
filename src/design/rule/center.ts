import { z } from 'zod';
import { axis, edgeSchema, type Immutable, id, partId } from '../field.ts';
import type { RuleShape } from './kind.ts';

/** The parts, as one block, have their middle halfway between `low` and `high`. */
export const centerSchema = z.strictObject({
  id,
  kind: z.literal('center'),
  axis,
  parts: z.array(partId).min(1).max(500),
  low: edgeSchema,
  high: edgeSchema,
});

export const centerShape: RuleShape<Immutable<z.infer<typeof centerSchema>>> = {
  pulled: 'block',
  slots: {
    parts: { is: 'parts', role: 'follow', least: 1, carried: 'others' },
    low: { is: 'edge', role: 'lead', turns: true },
    high: { is: 'edge', role: 'lead', turns: true },
  },
  drawn: 'gap',
  rooms: ({ axis, parts, low, high }) => {
    const ends = (side: 'low' | 'high') => parts.map((of) => ({ of, side }));
    return [
      { key: '-low', axis, from: [low], to: ends('low') },
      { key: '-high', axis, from: ends('high'), to: [high] },
    ];
  },
};
