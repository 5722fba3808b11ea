import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { railAt, stiles } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { count, FIELD, FINISH, stock } from '../question.ts';
import { boardNear } from '../stock.ts';

/** An opening to serve through, over a counter as wide as its casing. Its proportions are common practice, no source. */
export const hatch = kindOf({
  usual: { w: inches(24), h: inches(20) },
  questions: {
    columns: count(1, 6, ({ w }) => (w > inches(30) ? 2 : 1)),
    casing: stock('flat', ({ w }, has) => boardNear(has, Math.min(inches(2.5), w / 8), w / 6)),
    counter: stock('flat', ({ h }, has) => boardNear(has, inches(3.5), h / 4)),
    finish: FINISH,
    glass: FIELD,
  },
  make: (b, answers) => {
    const { finish, casing } = answers;
    b.part('painted', GROUND, 'opening', { finish: answers.glass });
    const all = b.within(GROUND);
    railAt(b, 'counter', 'counter', all, { stock: answers.counter, finish }, 'low');
    const over = { ...all, bottom: b.edge('counter', 'high') };
    const inner = { ...over, ...stiles(b, over, { stile: casing, finish }) };
    railAt(b, 'rail-top', 'top-rail', inner, { stock: casing, finish }, 'high');
    const roles = upTo(answers.columns - 1).map((number) => {
      const role = `mullion-${number}`;
      b.strip(role, { noun: 'mullion', number }, 'up', { stock: casing, finish });
      b.between(role, 'y', inner.bottom, b.edge('rail-top', 'low'));
      return role;
    });
    b.even(roles, 'x', inner.left, inner.right);
  },
});
