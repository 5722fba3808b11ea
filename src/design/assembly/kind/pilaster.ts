import { inches } from '../../../measure/units.ts';
import { GLUED, GROUND } from '../building.ts';
import { rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { row } from '../row.ts';
import { boardNear, finishesOf, moldingOf, sheetNear } from '../stock.ts';

const questions = {
  flutes: { is: 'count', least: 0, most: 7 },
  base: { is: 'stock', form: 'flat' },
  capital: { is: 'stock', form: 'flat' },
  cap: { is: 'stock', form: 'shaped' },
  flute: { is: 'stock', form: 'shaped' },
  sheet: { is: 'stock', form: 'sheet' },
  finish: { is: 'finish' },
  field: { is: 'finish' },
} as const;

/**
 * A flat column: a shaft with reeds between a base and a capital, each half as high as the shaft is wide (Doric: base and
 * capital 1/2 of a diameter; Ware, American Vignola). Reeds stand for flutes, which no saw cuts.
 */
export const pilaster = kindOf<typeof questions>({
  usual: { w: inches(6), h: inches(44) },
  questions,
  first: (size, has) => {
    const { ground, trim } = finishesOf(has);
    return {
      flutes: size.w < inches(5) ? 1 : 3,
      base: boardNear(has, size.w / 2, size.h / 5),
      capital: boardNear(has, size.w / 2, size.h / 5),
      cap: moldingOf(has, 'base-cap', 'half-round-20'),
      flute: moldingOf(has, 'half-round-half', 'half-round-20'),
      sheet: sheetNear(has, inches(1 / 4)),
      finish: trim,
      field: ground,
    };
  },
  make: (b, answers) => {
    const { finish } = answers;
    b.part('panel', GROUND, 'shaft', { stock: answers.sheet, finish: answers.field, fixing: GLUED });
    const all = b.within(GROUND);
    rail(b, 'base', 'base', all, { stock: answers.base, finish });
    b.set('base', 'y', 'low', all.bottom);
    rail(b, 'cap', 'cap', all, { stock: answers.cap, finish });
    b.set('cap', 'y', 'high', all.top);
    rail(b, 'capital', 'capital', all, { stock: answers.capital, finish });
    b.set('capital', 'y', 'high', b.edge('cap', 'low'));
    if (answers.flutes === 0) return;
    row(b, 'flutes', 'reeds', 'up', {
      stock: answers.flute,
      finish,
      spacing: { mode: 'gaps', count: answers.flutes },
    });
    b.fill('flutes', { ...all, bottom: b.edge('base', 'high'), top: b.edge('capital', 'low') });
  },
});
