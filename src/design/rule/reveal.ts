import { z } from 'zod';
import { type Axis, type Edge, FARTHEST, type Immutable, id, length, partId, thing } from '../field.ts';
import type { BetweenRule } from './between.ts';
import type { RuleShape } from './kind.ts';

/** The same margin on all four sides inside something. */
export const revealSchema = z.strictObject({
  id,
  kind: z.literal('reveal'),
  part: partId,
  inside: thing,
  inner: z.boolean(),
  margin: length,
});

export const revealShape: RuleShape<Immutable<z.infer<typeof revealSchema>>> = {
  both: true,
  pulled: 'half',
  squeezes: true,
  slots: {
    part: { is: 'part', role: 'follow' },
    inside: { is: 'thing' },
    inner: { is: 'plain' },
    margin: { is: 'measure', least: -FARTHEST, quiet: true },
  },
  drawn: 'distance',
  rooms: ({ part, inside, inner }) =>
    (['x', 'y'] as const).map((axis) => ({
      key: `-${axis}`,
      axis,
      from: [{ of: inside, side: 'low', inner }],
      to: [{ of: part, side: 'low' }],
      measure: 'margin',
    })),
  split: ({ id, part, inside, inner, margin }, axis) => {
    const edge = (side: Edge['side']): Edge => (inner ? { of: inside, side, inner } : { of: inside, side });
    const ends = { low: edge('low'), high: edge('high'), insetLow: margin, insetHigh: margin };
    const on = (axis: Axis): BetweenRule => ({ id, kind: 'between', axis, part, ...ends });
    return { along: on(axis), across: on(axis === 'x' ? 'y' : 'x') };
  },
};
