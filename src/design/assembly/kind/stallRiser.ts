import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { railAt, stiles } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { PANEL_MOLDING, PANEL_STYLES, paneled } from '../paneling.ts';
import { choice, count, stock } from '../question.ts';
import { boardNear } from '../stock.ts';

const columns = count(1, 12, ({ w, h }) => w / (0.9 * h));

/** What stands under a shop window: panels in a row between a base and the sill. Its proportions are common practice, no source. */
export const stallRiser = kindOf({
  usual: { w: inches(36), h: inches(16) },
  questions: {
    columns,
    style: choice(PANEL_STYLES, 'molded'),
    stile: stock('flat', (size, has) =>
      boardNear(has, size.h / 7, Math.min(size.h / 5, size.w / (3 * columns.first(size, has)))),
    ),
    bottom: stock('flat', ({ h }, has) => boardNear(has, h / 5, h / 4)),
    sill: stock('flat', ({ h }, has) => boardNear(has, inches(1.5), h / 6)),
    molding: PANEL_MOLDING,
    ...FACING,
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
