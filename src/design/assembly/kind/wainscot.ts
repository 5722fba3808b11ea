import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing, firstFacing } from '../facing.ts';
import { railAt } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { row } from '../row.ts';
import { boardNear, moldingOf } from '../stock.ts';

const questions = {
  columns: { is: 'count', least: 1, most: 16 },
  stile: { is: 'stock', form: 'flat' },
  bottom: { is: 'stock', form: 'flat' },
  cap: { is: 'stock', form: 'shaped' },
  ...FACING,
} as const;

/** Panels along the foot of a wall or a stall, between a base, stiles and a rail under a cap. */
export const wainscot = kindOf<typeof questions>({
  usual: { w: inches(36), h: inches(24) },
  questions,
  first: (size, has) => ({
    // Panels about as wide as they are high. Common practice, no source.
    columns: Math.min(16, Math.max(1, Math.round(size.w / (0.7 * size.h)))),
    stile: boardNear(has, size.h / 9, size.h / 6),
    bottom: boardNear(has, size.h / 6, size.h / 4),
    cap: moldingOf(has, 'base-cap', 'half-round-20'),
    ...firstFacing(has),
  }),
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
