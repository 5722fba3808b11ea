import type { FinishUse } from '../../finish/result.ts';
import type { Plan } from '../../plan/types.ts';
import { type Cell, type Column, rowsOf } from './csv.ts';

const rounded = (value: number): number => Math.round(value * 1e4) / 1e4;

/** What is seen and what is painted of every finish, and the paint, primer and tape that it takes. */
export function paintRows({ finish, design }: Plan): Cell[][] {
  const names = new Map(design.finishes.map(({ id, name }) => [id, name]));
  const columns: Column<FinishUse>[] = [
    ['finish', (use) => names.get(use.finish) ?? use.finish],
    ['seen_face_m2', ({ face }) => rounded(face)],
    ['seen_edge_m2', ({ edge }) => rounded(edge)],
    ['painted_face_m2', ({ painted }) => rounded(painted.face)],
    ['painted_edge_m2', ({ painted }) => rounded(painted.edge)],
    ['painted_back_m2', ({ painted }) => rounded(painted.back)],
    ['coats', ({ coats }) => coats],
    ['paint_l', ({ volume }) => rounded(volume)],
    ['primer_l', ({ primer }) => rounded(primer)],
    ['left_l', ({ left }) => rounded(left)],
    ['tape_mm', ({ tape }) => Math.round(tape)],
  ];
  return rowsOf(columns, finish.uses);
}
