import { inches } from '../../measure/units.ts';
import type { PanelShape } from '../schema.ts';
import { type Building, GLUED, GROUND, type PartNoun } from './building.ts';
import { type Answers, FIELD, FINISH, stock } from './question.ts';
import { sheetNear } from './stock.ts';

/** Asked of all that lies on a thin sheet: of what, and in which color what lies on it and the sheet itself is. */
export const FACING = {
  sheet: stock('sheet', (_, has) => sheetNear(has, inches(1 / 4))),
  finish: FINISH,
  field: FIELD,
};

/** The thin sheet that all else lies on. */
export function facing(
  b: Building,
  noun: PartNoun,
  { sheet, field }: Pick<Answers<typeof FACING>, 'sheet' | 'field'>,
  shape?: PanelShape,
): void {
  b.part('panel', GROUND, noun, { stock: sheet, finish: field, fixing: GLUED, ...(shape ? { shape } : {}) });
}
