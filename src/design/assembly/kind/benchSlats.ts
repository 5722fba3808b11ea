import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { railAt, stiles } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { FIELD, FINISH, length, stock } from '../question.ts';
import { row } from '../row.ts';
import { boardNear, lathNear } from '../stock.ts';

/** The front of a bench: a seat over two legs, and slats between them. Its proportions are common practice, no source. */
export const benchSlats = kindOf({
  usual: { w: inches(32), h: inches(17) },
  questions: {
    gap: length(3, 100, inches(1 / 2)),
    seat: stock('flat', ({ h }, has) => boardNear(has, inches(1.5), h / 6)),
    leg: stock('flat', ({ w }, has) => boardNear(has, inches(2.5), w / 6)),
    slat: stock('flat', (_, has) => lathNear(has, inches(1.375), inches(1 / 4))),
    finish: FINISH,
    field: FIELD,
  },
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
