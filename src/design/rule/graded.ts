import { z } from 'zod';
import { axis, edgeSchema, type Immutable, id, partId, sizeOrZero } from '../field.ts';
import type { RuleShape } from './kind.ts';

/** Sizes along the axis in the given ratio, filling from `low` to `high` with `gap` between. */
export const gradedSchema = z.strictObject({
  id,
  kind: z.literal('graded'),
  axis,
  parts: z.array(partId).min(1).max(100),
  low: edgeSchema,
  high: edgeSchema,
  ratio: z.array(z.number().positive().max(1000)).min(1).max(100),
  gap: sizeOrZero,
});

export const gradedShape: RuleShape<Immutable<z.infer<typeof gradedSchema>>> = {
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
