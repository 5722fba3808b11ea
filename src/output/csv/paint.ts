import type { Plan } from '../../plan/types.ts';
import type { Cell } from './csv.ts';

const HEAD = [
  'finish',
  'seen_face_m2',
  'seen_edge_m2',
  'painted_face_m2',
  'painted_edge_m2',
  'painted_back_m2',
  'coats',
  'paint_l',
  'primer_l',
  'left_l',
  'tape_mm',
];

/** What is seen and what is painted of every finish, and the paint, primer and tape that it takes. */
export function paintRows({ finish, design }: Plan): Cell[][] {
  const names = new Map(design.finishes.map(({ id, name }) => [id, name]));
  return [
    HEAD,
    ...finish.uses.map((use): Cell[] => [
      names.get(use.finish) ?? use.finish,
      round(use.face),
      round(use.edge),
      round(use.painted.face),
      round(use.painted.edge),
      round(use.painted.back),
      use.coats,
      round(use.volume),
      round(use.primer),
      round(use.left),
      Math.round(use.tape),
    ]),
  ];
}

const round = (value: number): number => Math.round(value * 1e4) / 1e4;
