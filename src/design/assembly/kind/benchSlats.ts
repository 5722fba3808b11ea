import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { railAt, stiles } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { row } from '../row.ts';
import { boardNear, finishesOf, lathNear } from '../stock.ts';

const questions = {
  gap: { is: 'length', least: 3, most: 100 },
  seat: { is: 'stock', form: 'flat' },
  leg: { is: 'stock', form: 'flat' },
  slat: { is: 'stock', form: 'flat' },
  finish: { is: 'finish' },
  field: { is: 'finish' },
} as const;

/** The front of a bench: a seat over two legs, and slats between them. Its proportions are common practice, no source. */
export const benchSlats = kindOf<typeof questions>({
  usual: { w: inches(32), h: inches(17) },
  questions,
  first: (size, has) => ({
    gap: inches(1 / 2),
    seat: boardNear(has, inches(1.5), size.h / 6),
    leg: boardNear(has, inches(2.5), size.w / 6),
    slat: lathNear(has, inches(1.375), inches(1 / 4)),
    ...finishesOf(has),
  }),
  make: (b, { gap, seat, leg, slat, finish, field }) => {
    b.part('painted', GROUND, 'shade', { finish: field });
    const all = b.within(GROUND);
    railAt(b, 'seat', 'seat', all, { stock: seat, finish }, 'high');
    const under = { ...all, top: b.edge('seat', 'low') };
    const between = stiles(b, under, { stile: leg, finish }, ['left-leg', 'right-leg']);
    row(b, 'slats', 'slats', 'across', { stock: slat, finish, most: gap });
    b.fill('slats', { ...under, ...between });
  },
});
