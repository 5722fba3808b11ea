import { edgeOf } from '../edge.ts';
import type { Axis } from '../field.ts';
import { FARTHEST } from '../limits.ts';
import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

/** What a margin says along one axis: between which edges, and how far from them. */
export function endsOfMargin({
  inside,
  inner,
  margin,
}: Pick<RuleOf<'reveal'>, 'inside' | 'inner' | 'margin'>) {
  const around = { of: inside, inner };
  return { low: edgeOf(around, 'low'), high: edgeOf(around, 'high'), insetLow: margin, insetHigh: margin };
}

export const revealShape: RuleShape<RuleOf<'reveal'>> = {
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
    const on = (axis: Axis): RuleOf<'between'> => ({
      id,
      kind: 'between',
      axis,
      part,
      ...endsOfMargin(margin),
    });
    return { along: on(axis), across: on(axis === 'x' ? 'y' : 'x') };
  },
};
