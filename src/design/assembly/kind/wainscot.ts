import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { railAt } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { count, stock } from '../question.ts';
import { row } from '../row.ts';
import { boardNear, moldingOf } from '../stock.ts';

/** Panels along the foot of a wall or a stall, between a base, stiles and a rail under a cap. */
export const wainscot = kindOf({
  usual: { w: inches(36), h: inches(24) },
  questions: {
    // Panels about as wide as they are high. Common practice, no source.
    columns: count(1, 16, ({ w, h }) => w / (0.7 * h)),
    stile: stock('flat', ({ h }, has) => boardNear(has, h / 9, h / 6)),
    bottom: stock('flat', ({ h }, has) => boardNear(has, h / 6, h / 4)),
    cap: stock('shaped', (_, has) => moldingOf(has, 'base-cap', 'half-round-20')),
    ...FACING,
  },
  make: (b, answers) => {
    facing(b, 'leaf', answers);
    const all = b.within(GROUND);
    const { finish } = answers;
    railAt(b, 'rail-bottom', 'base', all, { stock: answers.bottom, finish }, 'low');
    railAt(b, 'cap', 'cap', all, { stock: answers.cap, finish }, 'high');
    railAt(b, 'rail-top', 'top-rail', all, { stock: answers.stile, finish }, 'high', b.edge('cap', 'low'));
    row(b, 'stiles', 'stiles', 'up', {
      stock: answers.stile,
      finish,
      spacing: { mode: 'flush', count: answers.columns + 1 },
    });
    b.fill('stiles', { ...all, bottom: b.edge('rail-bottom', 'high'), top: b.edge('rail-top', 'low') });
  },
});
