import { inches } from '../../../measure/units.ts';
import { GLUED, GROUND } from '../building.ts';
import { framed, rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { boardNear, finishesOf, sheetNear } from '../stock.ts';

const questions = {
  shelves: { is: 'count', least: 0, most: 12 },
  stile: { is: 'stock', form: 'flat' },
  bottom: { is: 'stock', form: 'flat' },
  shelf: { is: 'stock', form: 'flat' },
  sheet: { is: 'stock', form: 'sheet' },
  finish: { is: 'finish' },
  field: { is: 'finish' },
} as const;

/** The front of a bookshelf: a frame with edges of shelves, evenly apart. Its proportions are common practice, no source. */
export const shelves = kindOf<typeof questions>({
  usual: { w: inches(24), h: inches(36) },
  questions,
  first: (size, has) => {
    const { ground, trim } = finishesOf(has);
    return {
      // A book is about 10 in high.
      shelves: Math.min(12, Math.max(1, Math.round(size.h / inches(11)) - 1)),
      stile: boardNear(has, inches(1.5), size.w / 6),
      bottom: boardNear(has, inches(3.5), size.h / 8),
      shelf: boardNear(has, inches(1.5), size.h / 8),
      sheet: sheetNear(has, inches(1 / 4)),
      finish: trim,
      field: ground,
    };
  },
  make: (b, answers) => {
    b.part('panel', GROUND, 'leaf', { stock: answers.sheet, finish: answers.field, fixing: GLUED });
    const inner = framed(b, b.within(GROUND), answers);
    const roles = upTo(answers.shelves).map((number) => {
      rail(b, `shelf-${number}`, 'shelf', inner, { stock: answers.shelf, finish: answers.finish }, number);
      return `shelf-${number}`;
    });
    b.even(roles, 'y', inner.bottom, inner.top);
  },
});
