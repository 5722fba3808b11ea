import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { railAt, stiles } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { boardNear, finishesOf } from '../stock.ts';

const questions = {
  columns: { is: 'count', least: 1, most: 6 },
  casing: { is: 'stock', form: 'flat' },
  counter: { is: 'stock', form: 'flat' },
  finish: { is: 'finish' },
  glass: { is: 'finish' },
} as const;

/** An opening to serve through, over a counter as wide as its casing. Its proportions are common practice, no source. */
export const hatch = kindOf<typeof questions>({
  usual: { w: inches(24), h: inches(20) },
  questions,
  first: (size, has) => {
    const { finish, field } = finishesOf(has);
    const casing = boardNear(has, Math.min(inches(2.5), size.w / 8), size.w / 6);
    return {
      columns: size.w > inches(30) ? 2 : 1,
      casing,
      counter: boardNear(has, inches(3.5), size.h / 4),
      finish,
      glass: field,
    };
  },
  make: (b, answers) => {
    const { finish, casing: stock } = answers;
    b.part('painted', GROUND, 'opening', { finish: answers.glass });
    const all = b.within(GROUND);
    railAt(b, 'counter', 'counter', all, { stock: answers.counter, finish }, 'low');
    const over = { ...all, bottom: b.edge('counter', 'high') };
    const inner = { ...over, ...stiles(b, over, { stile: stock, finish }) };
    railAt(b, 'rail-top', 'top-rail', inner, { stock, finish }, 'high');
    const roles = upTo(answers.columns - 1).map((number) => {
      const role = `mullion-${number}`;
      b.strip(role, { noun: 'mullion', number }, 'up', { stock, finish });
      b.between(role, 'y', inner.bottom, b.edge('rail-top', 'low'));
      return role;
    });
    b.even(roles, 'x', inner.left, inner.right);
  },
});
