import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { choice, count, FIELD, FINISH, length, stock } from '../question.ts';
import { boardNear } from '../stock.ts';

/** Left above the upper and below the lower ledge, of low doors no more than so much of the height. Common practice, no source. */
const FROM_END = inches(4);
const END_SHARE = 1 / 8;

/** Planks held by ledges across them, with braces between the ledges. */
export const ledgedDoor = kindOf({
  usual: { w: inches(16), h: inches(36) },
  questions: {
    ledges: count(2, 4, ({ w, h }) => (h > 2.5 * w ? 3 : 2)),
    brace: choice(['none', 'rising', 'falling', 'crossed'], 'rising'),
    margin: length(0, 600, ({ h }) => Math.min(FROM_END, h * END_SHARE)),
    plank: stock('flat', ({ w }, has) => boardNear(has, inches(3.5), w / 3)),
    ledge: stock('flat', ({ w, h }, has) => boardNear(has, w / 5, h / 8)),
    finish: FINISH,
    field: FIELD,
  },
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
