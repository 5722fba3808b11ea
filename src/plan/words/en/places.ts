import type { PlanWords } from '../words.ts';

const SIDES = {
  x: { low: 'left edge', mid: 'center line', high: 'right edge' },
  y: { low: 'bottom edge', mid: 'center line', high: 'top edge' },
} as const;

const level = {
  face: 'the face',
  rim: 'the rim',
  ledge: 'the cleat ledge',
  field: 'the field',
  skin: 'the skin',
} as const;

export const places: PlanWords['places'] = {
  bed: {
    frame: 'The bed frame',
    platform: 'The platform',
    mattress: 'The mattress',
    legs: 'The legs',
    'leg-left': 'Left leg',
    'leg-right': 'Right leg',
    skin: 'The skin',
  },
  level,
  percent: (number) => `${number}%`,
  fromRim: {
    above: (length) => `${length} above the rim`,
    below: (length) => `${length} below the rim`,
    even: 'even with the rim',
  },
  edge: (axis, side, inner, of) =>
    `${inner ? 'inner ' : ''}${SIDES[axis][side]} of ${'level' in of ? level[of.level] : of.name}`,
  member: (name, column, row) => (row === 1 ? `${name} ${column}` : `${name} ${column}, row ${row}`),
  whole: 'every piece',
};
