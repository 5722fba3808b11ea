import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { framed, rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { count, stock } from '../question.ts';
import { boardNear } from '../stock.ts';

/** The front of a bookshelf: a frame with edges of shelves, evenly apart. Its proportions are common practice, no source. */
export const shelves = kindOf({
  usual: { w: inches(24), h: inches(36) },
  questions: {
    // A book is about 10 in high.
    shelves: count(0, 12, ({ h }) => Math.max(1, h / inches(11) - 1)),
    stile: stock('flat', ({ w }, has) => boardNear(has, inches(1.5), w / 6)),
    bottom: stock('flat', ({ h }, has) => boardNear(has, inches(3.5), h / 8)),
    shelf: stock('flat', ({ h }, has) => boardNear(has, inches(1.5), h / 8)),
    ...FACING,
  },
  make: (b, answers) => {
    facing(b, 'leaf', answers);
    const inner = framed(b, b.within(GROUND), answers);
    const roles = upTo(answers.shelves).map((number) => {
      rail(b, `shelf-${number}`, 'shelf', inner, { stock: answers.shelf, finish: answers.finish }, number);
      return `shelf-${number}`;
    });
    b.even(roles, 'y', inner.bottom, inner.top);
  },
});
