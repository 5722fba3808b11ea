import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { boardNear, finishesOf } from '../stock.ts';

const questions = {
  ledges: { is: 'count', least: 2, most: 4 },
  brace: { is: 'choice', of: ['none', 'rising', 'falling', 'crossed'] },
  margin: { is: 'length', least: 0, most: 600 },
  plank: { is: 'stock', form: 'flat' },
  ledge: { is: 'stock', form: 'flat' },
  finish: { is: 'finish' },
  field: { is: 'finish' },
} as const;

/** Left above the upper and below the lower ledge, of low doors no more than so much of the height. Common practice, no source. */
const FROM_END = inches(4);
const END_SHARE = 1 / 8;

/** Planks held by ledges across them, with braces between the ledges. */
export const ledgedDoor = kindOf<typeof questions>({
  usual: { w: inches(16), h: inches(36) },
  questions,
  first: (size, has) => ({
    ledges: size.h > 2.5 * size.w ? 3 : 2,
    brace: 'rising',
    margin: Math.min(FROM_END, size.h * END_SHARE),
    plank: boardNear(has, inches(3.5), size.w / 3),
    ledge: boardNear(has, size.w / 5, size.h / 8),
    ...finishesOf(has),
  }),
  make: (b, answers) => {
    b.part('fill', GROUND, 'planks', { stock: answers.plank, finish: answers.field, gap: inches(1 / 16) });
    const all = b.within(GROUND);
    const made = { stock: answers.ledge, finish: answers.finish };
    const ledges = upTo(answers.ledges).map((number) => {
      const role = `ledge-${number}`;
      rail(b, role, 'ledge', all, made, number);
      return role;
    });
    const low = ledges[0] ?? GROUND;
    const high = ledges[ledges.length - 1] ?? GROUND;
    b.set(low, 'y', 'low', all.bottom, answers.margin);
    b.set(high, 'y', 'high', all.top, -answers.margin);
    b.even(ledges.slice(1, -1), 'y', b.edge(low, 'high'), b.edge(high, 'low'));
    if (answers.brace === 'none') return;
    for (const number of upTo(ledges.length - 1)) {
      const lies = answers.brace === 'crossed' ? (['rising', 'falling'] as const) : [answers.brace];
      lies.forEach((lie, i) => {
        const role = i === 0 ? `brace-${number}` : `brace-${number}-over`;
        b.part('strip', role, { noun: 'brace', number }, { ...made, lie });
        b.between(role, 'x', all.left, all.right);
        b.between(role, 'y', b.edge(`ledge-${number}`, 'high'), b.edge(`ledge-${number + 1}`, 'low'));
      });
    }
  },
});
