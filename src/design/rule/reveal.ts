import { z } from 'zod';
import { type Axis, edgeOf, FARTHEST, type Immutable, id, length, partId, thing } from '../field.ts';
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

type RevealRule = Immutable<z.infer<typeof revealSchema>>;

/** What a margin says along one axis: between which edges, and how far from them. */
export function endsOfMargin({ inside, inner, margin }: Pick<RevealRule, 'inside' | 'inner' | 'margin'>) {
  const around = { of: inside, inner };
  return { low: edgeOf(around, 'low'), high: edgeOf(around, 'high'), insetLow: margin, insetHigh: margin };
}

export const revealShape: RuleShape<RevealRule> = {
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
  split: ({ id, part, ...margin }, axis) => {
    const on = (axis: Axis): BetweenRule => ({ id, kind: 'between', axis, part, ...endsOfMargin(margin) });
    return { along: on(axis), across: on(axis === 'x' ? 'y' : 'x') };
  },
};
