import type { PlanWords } from '../words.ts';

// With its article, which phrases join to a preposition; see `of` in `rules.ts`.
const SIDES = {
  x: { low: 'el canto izquierdo', mid: 'el eje vertical', high: 'el canto derecho' },
  y: { low: 'el canto inferior', mid: 'el eje horizontal', high: 'el canto superior' },
} as const;

const level = {
  face: 'el frente',
  rim: 'el borde',
  ledge: 'el apoyo',
  field: 'el fondo',
  skin: 'el forro',
} as const;

export const places: PlanWords['places'] = {
  bed: {
    frame: 'El bastidor de la cama',
    platform: 'La base',
    mattress: 'El colchón',
    legs: 'Las patas',
    'leg-left': 'Pata izquierda',
    'leg-right': 'Pata derecha',
    skin: 'El forro',
  },
  level,
  percent: (number) => `${number} %`,
  fromRim: {
    above: (length) => `${length} por encima del borde`,
    below: (length) => `${length} por debajo del borde`,
    even: 'a ras del borde',
  },
  edge: (axis, side, inner, of) => {
    const edge = inner ? SIDES[axis][side].replace('canto', 'canto interior') : SIDES[axis][side];
    return `${edge} ${'level' in of ? `del ${level[of.level].slice(3)}` : `de ${of.name}`}`;
  },
  member: (name, column, row) => (row === 1 ? `${name} ${column}` : `${name} ${column}, fila ${row}`),
  whole: 'todas las piezas',
};
