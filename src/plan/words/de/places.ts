import type { PlanWords } from '../words.ts';

// All of them feminine, so that one pair of endings bends every phrase; see `dative` in `rules.ts`.
const EDGES = {
  x: { low: 'linke Kante', mid: 'senkrechte Mittellinie', high: 'rechte Kante' },
  y: { low: 'untere Kante', mid: 'waagerechte Mittellinie', high: 'obere Kante' },
} as const;

const level = {
  face: 'die Front',
  rim: 'der Rand',
  ledge: 'die Auflage',
  field: 'das Feld',
  skin: 'die Beplankung',
} as const;

const LEVEL_GENITIVE = {
  face: 'der Front',
  rim: 'des Rands',
  ledge: 'der Auflage',
  field: 'des Felds',
  skin: 'der Beplankung',
} as const;

export const places: PlanWords['places'] = {
  bed: {
    frame: 'Bettrahmen',
    platform: 'Liegefläche',
    mattress: 'Matratze',
    legs: 'Füße',
    'leg-left': 'Linker Fuß',
    'leg-right': 'Rechter Fuß',
    skin: 'Beplankung',
  },
  level,
  percent: (number) => `${number} %`,
  fromRim: {
    above: (length) => `${length} über dem Rand`,
    below: (length) => `${length} unter dem Rand`,
    even: 'bündig mit dem Rand',
  },
  edge: (axis, side, inner, of) => {
    const edge = inner ? EDGES[axis][side].replace('Kante', 'Innenkante') : EDGES[axis][side];
    return `${edge} ${'level' in of ? LEVEL_GENITIVE[of.level] : `von ${of.name}`}`;
  },
  member: (name, column, row) => (row === 1 ? `${name} ${column}` : `${name} ${column}, Reihe ${row}`),
  whole: 'alle Stücke',
};
