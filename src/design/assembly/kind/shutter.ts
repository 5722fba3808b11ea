import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing, firstFacing } from '../facing.ts';
import { framed, rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { row } from '../row.ts';
import { boardNear, lathNear } from '../stock.ts';

const questions = {
  middle: { is: 'yes' },
  stile: { is: 'stock', form: 'flat' },
  bottom: { is: 'stock', form: 'flat' },
  slat: { is: 'stock', form: 'flat' },
  ...FACING,
} as const;

/** Between two louvers (shutter makers' figures for slats of 3/8 by 2 in). */
const GAP = inches(3 / 8);

/** A frame with louvers, in one field or two. */
export const shutter = kindOf<typeof questions>({
  usual: { w: inches(10), h: inches(28) },
  questions,
  first: (size, has) => ({
    middle: size.h > 2 * size.w,
    stile: boardNear(has, inches(1.5), size.w / 5),
    bottom: boardNear(has, inches(2.5), size.h / 8),
    slat: lathNear(has, inches(1.375), inches(1 / 4)),
    ...firstFacing(has),
  }),
  make: (b, answers) => {
    facing(b, 'leaf', answers);
    const inner = framed(b, b.within(GROUND), answers);
    const slats = { stock: answers.slat, finish: answers.finish, most: GAP };
    row(b, 'slats', 'louvers', 'across', slats);
    if (!answers.middle) {
      b.fill('slats', inner);
      return;
    }
    rail(b, 'rail-middle', 'cross-rail', inner, { stock: answers.stile, finish: answers.finish });
    b.center('rail-middle', 'y', inner.bottom, inner.top);
    b.fill('slats', { ...inner, top: b.edge('rail-middle', 'low') });
    row(b, 'slats-2', { noun: 'louvers', number: 2 }, 'across', slats);
    b.fill('slats-2', { ...inner, bottom: b.edge('rail-middle', 'high') });
  },
});
