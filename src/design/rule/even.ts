import { inches } from '../../measure/units.ts';
import type { Edge } from '../field.ts';
import { EVEN_MODES } from '../limits.ts';
import type { RuleShape } from './kind.ts';
import type { RuleOf } from './schema.ts';

export const evenShape: RuleShape<RuleOf<'even'>> = {
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
