import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing, firstFacing } from '../facing.ts';
import { railAt, stiles } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { PANEL_STYLES, paneled } from '../paneling.ts';
import { boardNear, moldingOf } from '../stock.ts';

const questions = {
  columns: { is: 'count', least: 1, most: 12 },
  style: { is: 'choice', of: PANEL_STYLES },
  stile: { is: 'stock', form: 'flat' },
  bottom: { is: 'stock', form: 'flat' },
  sill: { is: 'stock', form: 'flat' },
  molding: { is: 'stock', form: 'shaped', where: { field: 'style', is: ['molded'] } },
  ...FACING,
} as const;

/** What stands under a shop window: panels in a row between a base and the sill. Its proportions are common practice, no source. */
export const stallRiser = kindOf<typeof questions>({
  usual: { w: inches(36), h: inches(16) },
  questions,
  first: (size, has) => {
    const columns = Math.min(12, Math.max(1, Math.round(size.w / (0.9 * size.h))));
    const stile = boardNear(has, size.h / 7, Math.min(size.h / 5, size.w / (3 * columns)));
    return {
      columns,
      style: 'molded',
      stile,
      bottom: boardNear(has, size.h / 5, size.h / 4),
      sill: boardNear(has, inches(1.5), size.h / 6),
      molding: moldingOf(has, 'panel-molding-small', 'half-round-20'),
      ...firstFacing(has),
    };
  },
  make: (b, answers) => {
    const { finish } = answers;
    facing(b, 'leaf', answers);
    const all = b.within(GROUND);
    railAt(b, 'rail-bottom', 'base', all, { stock: answers.bottom, finish }, 'low');
    railAt(b, 'sill', 'sill', all, { stock: answers.sill, finish }, 'high');
    const between = { ...all, bottom: b.edge('rail-bottom', 'high'), top: b.edge('sill', 'low') };
    paneled(
      b,
      { ...between, ...stiles(b, between, answers) },
      { ...answers, rows: [1], stock: answers.stile, fieldFinish: answers.field },
    );
  },
});
