import { inches } from '../../../measure/units.ts';
import { GLUED, GROUND } from '../building.ts';
import { rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { row } from '../row.ts';
import { boardNear, finishesOf, moldingOf, sheetNear } from '../stock.ts';

const questions = {
  columns: { is: 'count', least: 1, most: 16 },
  stile: { is: 'stock', form: 'flat' },
  bottom: { is: 'stock', form: 'flat' },
  cap: { is: 'stock', form: 'shaped' },
  sheet: { is: 'stock', form: 'sheet' },
  finish: { is: 'finish' },
  field: { is: 'finish' },
} as const;

/** Panels along the foot of a wall or a stall, between a base, stiles and a rail under a cap. */
export const wainscot = kindOf<typeof questions>({
  usual: { w: inches(36), h: inches(24) },
  questions,
  first: (size, has) => {
    const { ground, trim } = finishesOf(has);
    return {
      // Panels about as wide as they are high. Common practice, no source.
      columns: Math.min(16, Math.max(1, Math.round(size.w / (0.7 * size.h)))),
      stile: boardNear(has, size.h / 9, size.h / 6),
      bottom: boardNear(has, size.h / 6, size.h / 4),
      cap: moldingOf(has, 'base-cap', 'half-round-20'),
      sheet: sheetNear(has, inches(1 / 4)),
      finish: trim,
      field: ground,
    };
  },
  make: (b, answers) => {
    b.part('panel', GROUND, 'leaf', { stock: answers.sheet, finish: answers.field, fixing: GLUED });
    const all = b.within(GROUND);
    rail(b, 'rail-bottom', 'base', all, { stock: answers.bottom, finish: answers.finish });
    b.set('rail-bottom', 'y', 'low', all.bottom);
    rail(b, 'cap', 'cap', all, { stock: answers.cap, finish: answers.finish });
    b.set('cap', 'y', 'high', all.top);
    rail(b, 'rail-top', 'top-rail', all, { stock: answers.stile, finish: answers.finish });
    b.set('rail-top', 'y', 'high', b.edge('cap', 'low'));
    row(b, 'stiles', 'stiles', 'up', {
      stock: answers.stile,
      finish: answers.finish,
      spacing: { mode: 'flush', count: answers.columns + 1 },
    });
    b.fill('stiles', { ...all, bottom: b.edge('rail-bottom', 'high'), top: b.edge('rail-top', 'low') });
  },
});
