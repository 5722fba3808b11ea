import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

export const centerShape: RuleShape<RuleOf<'center'>> = {
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
