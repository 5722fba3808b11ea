import { inches } from '../../measure/units.ts';
import type { PanelShape } from '../schema.ts';
import { type Building, GLUED, GROUND, type PartNoun } from './building.ts';
import type { Answers, Supplies } from './question.ts';
import { finishesOf, sheetNear } from './stock.ts';

/** Asked of all that lies on a thin sheet: of what, and in which color what lies on it and the sheet itself is. */
export const FACING = {
  sheet: { is: 'stock', form: 'sheet' },
  finish: { is: 'finish' },
  field: { is: 'finish' },
} as const;

/** The answers to that by rule. */
export const firstFacing = (has: Supplies) => ({ sheet: sheetNear(has, inches(1 / 4)), ...finishesOf(has) });

/** The thin sheet that all else lies on. */
export function facing(
  b: Building,
  noun: PartNoun,
  { sheet, field }: Pick<Answers<typeof FACING>, 'sheet' | 'field'>,
  shape?: PanelShape,
): void {
  b.part('panel', GROUND, noun, { stock: sheet, finish: field, fixing: GLUED, ...(shape ? { shape } : {}) });
}
