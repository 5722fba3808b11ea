import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { rail, railAt } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { FIELD, FINISH, stock, yes } from '../question.ts';
import { boardNear, lathNear } from '../stock.ts';

/** A door of planks with ledges, hung by two straps from a track above. Its proportions are common practice, no source. */
export const slidingDoor = kindOf({
  usual: { w: inches(20), h: inches(42) },
  questions: {
    middle: yes(({ w, h }) => h > 1.5 * w),
    plank: stock('flat', ({ w }, has) => boardNear(has, inches(3.5), w / 3)),
    ledge: stock('flat', ({ w, h }, has) => boardNear(has, w / 6, h / 10)),
    track: stock('flat', (_, has) => lathNear(has, inches(1.375), inches(1 / 4))),
    finish: FINISH,
    field: FIELD,
  },
  make: (b, answers) => {
    b.part('fill', GROUND, 'planks', { stock: answers.plank, finish: answers.field, gap: inches(1 / 16) });
    const all = b.within(GROUND);
    const made = { stock: answers.ledge, finish: answers.finish };
    railAt(b, 'track', 'track', all, { stock: answers.track, finish: answers.finish }, 'high');
    const under = { ...all, top: b.edge('track', 'low') };
    const top = answers.middle ? 'ledge-3' : 'ledge-2';
    for (const number of upTo(answers.middle ? 3 : 2)) rail(b, `ledge-${number}`, 'ledge', all, made, number);
    b.set('ledge-1', 'y', 'low', under.bottom);
    b.set(top, 'y', 'high', under.top);
    if (answers.middle) b.even(['ledge-2'], 'y', b.edge('ledge-1', 'high'), b.edge(top, 'low'));
    const sides = [
      ['left', b.edge(GROUND, 'low'), b.edge(GROUND, 'mid')],
      ['right', b.edge(GROUND, 'mid'), b.edge(GROUND, 'high')],
    ] as const;
    for (const [side, low, high] of sides) {
      const role = `hanger-${side}`;
      const noun = side === 'left' ? 'left-hanger' : 'right-hanger';
      b.hardware(role, noun, { entry: 'hanger-7in', on: top });
      b.center(role, 'x', low, high);
      b.set(role, 'y', 'high', under.top);
    }
  },
});
