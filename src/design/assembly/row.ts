import type { Mm } from '../../measure/units.ts';
import { SQUARE_ENDS } from '../ends.ts';
import type { Spacing, Strip } from '../schema.ts';
import { type Building, type Called, GLUED, type PartNoun } from './building.ts';

/** What a row is made of, and how it is spread: by a spacing, or with gaps of at most so much. */
interface Row {
  readonly stock: string;
  readonly finish: string | null;
  readonly spacing?: Spacing;
  readonly most?: Mm;
  readonly ends?: Strip['ends'] | undefined;
  /** Places from the left or the foot that stay empty. */
  readonly without?: readonly number[];
}

/** Strips alike, spread evenly over their box. */
export function row(
  b: Building,
  role: string,
  called: PartNoun | Called,
  lie: 'up' | 'across',
  { stock, finish, spacing, most, ends = SQUARE_ENDS, without = [] }: Row,
): void {
  const width = b.widthOf(stock);
  const spread: Spacing = spacing ?? { mode: 'most', count: 1, most };
  b.part('array', role, called, {
    finish,
    fixing: GLUED,
    member: { kind: 'strip', finish, stock, lie, angle: 0, length: 500, onEdge: false, ends, fit: false },
    overrides: Object.fromEntries(
      without.map((place) => [lie === 'up' ? `${place},0` : `0,${place}`, { omit: true }]),
    ),
    memberSize: { w: width, h: width },
    across: lie === 'up' ? spread : null,
    up: lie === 'across' ? spread : null,
  });
}
