import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing, firstFacing } from '../facing.ts';
import { railAt } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { row } from '../row.ts';
import { boardNear, moldingOf } from '../stock.ts';

const questions = {
  flutes: { is: 'count', least: 0, most: 7 },
  base: { is: 'stock', form: 'flat' },
  capital: { is: 'stock', form: 'flat' },
  cap: { is: 'stock', form: 'shaped' },
  flute: { is: 'stock', form: 'shaped' },
  ...FACING,
} as const;

/**
 * A flat column: a shaft with reeds between a base and a capital, each half as high as the shaft is wide (Doric: base and
 * capital 1/2 of a diameter; Ware, American Vignola). Reeds stand for flutes, which no saw cuts.
 */
export const pilaster = kindOf<typeof questions>({
  usual: { w: inches(6), h: inches(44) },
  questions,
  first: (size, has) => ({
    flutes: size.w < inches(5) ? 1 : 3,
    base: boardNear(has, size.w / 2, size.h / 5),
    capital: boardNear(has, size.w / 2, size.h / 5),
    cap: moldingOf(has, 'base-cap', 'half-round-20'),
    flute: moldingOf(has, 'half-round-half', 'half-round-20'),
    ...firstFacing(has),
  }),
  make: (b, answers) => {
    const { finish } = answers;
    facing(b, 'shaft', answers);
    const all = b.within(GROUND);
    railAt(b, 'base', 'base', all, { stock: answers.base, finish }, 'low');
    railAt(b, 'cap', 'cap', all, { stock: answers.cap, finish }, 'high');
    railAt(b, 'capital', 'capital', all, { stock: answers.capital, finish }, 'high', b.edge('cap', 'low'));
    if (answers.flutes === 0) return;
    row(b, 'flutes', 'reeds', 'up', {
      stock: answers.flute,
      finish,
      spacing: { mode: 'gaps', count: answers.flutes },
    });
    b.fill('flutes', { ...all, bottom: b.edge('base', 'high'), top: b.edge('capital', 'low') });
  },
});
