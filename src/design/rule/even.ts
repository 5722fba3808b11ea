import { z } from 'zod';
import { inches } from '../../measure/units.ts';
import { axis, type Edge, edgeSchema, type Immutable, id, partId, size } from '../field.ts';
import type { RuleShape } from './kind.ts';

export const EVEN_MODES = ['gaps', 'flush', 'half', 'centers', 'most'] as const;

/** The parts, in this order, spread between two edges. */
export const evenSchema = z.strictObject({
  id,
  kind: z.literal('even'),
  axis,
  parts: z.array(partId).min(1).max(500),
  low: edgeSchema,
  high: edgeSchema,
  mode: z.enum(EVEN_MODES),
  /** `centers` only: the pitch. */
  pitch: size.optional(),
  /** `most` only: a gap over this is a check. */
  most: size.optional(),
});

export const evenShape: RuleShape<Immutable<z.infer<typeof evenSchema>>> = {
  pulled: 'place',
  slots: {
    parts: { is: 'parts', role: 'follow', least: 1, carried: 'others' },
    low: { is: 'edge', role: 'lead' },
    high: { is: 'edge', role: 'lead' },
    mode: { is: 'choice', of: EVEN_MODES },
    pitch: { is: 'measure', least: 1, where: { field: 'mode', is: 'centers', start: inches(3) } },
    most: { is: 'measure', least: 1, where: { field: 'mode', is: 'most', start: inches(3) } },
  },
  drawn: 'gap',
  rooms: ({ axis, parts, low, high }, part) => {
    const at = parts.indexOf(part);
    const here = (side: 'low' | 'high'): Edge => ({ of: part, side });
    const before = parts[at - 1];
    const after = parts[at + 1];
    return [
      {
        key: '-before',
        axis,
        from: [before === undefined ? low : { of: before, side: 'high' }],
        to: [here('low')],
      },
      {
        key: '-after',
        axis,
        from: [here('high')],
        to: [after === undefined ? high : { of: after, side: 'low' }],
      },
    ];
  },
};
