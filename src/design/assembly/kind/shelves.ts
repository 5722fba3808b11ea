import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing, firstFacing } from '../facing.ts';
import { framed, rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { boardNear } from '../stock.ts';

const questions = {
  shelves: { is: 'count', least: 0, most: 12 },
  stile: { is: 'stock', form: 'flat' },
  bottom: { is: 'stock', form: 'flat' },
  shelf: { is: 'stock', form: 'flat' },
  ...FACING,
} as const;

/** The front of a bookshelf: a frame with edges of shelves, evenly apart. Its proportions are common practice, no source. */
export const shelves = kindOf<typeof questions>({
  usual: { w: inches(24), h: inches(36) },
  questions,
  first: (size, has) => ({
    // A book is about 10 in high.
    shelves: Math.min(12, Math.max(1, Math.round(size.h / inches(11)) - 1)),
    stile: boardNear(has, inches(1.5), size.w / 6),
    bottom: boardNear(has, inches(3.5), size.h / 8),
    shelf: boardNear(has, inches(1.5), size.h / 8),
    ...firstFacing(has),
  }),
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
