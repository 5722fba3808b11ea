import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing, firstFacing } from '../facing.ts';
import { railAt } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { row } from '../row.ts';
import { boardNear, lathNear, moldingOf } from '../stock.ts';

const questions = {
  dentils: { is: 'yes' },
  crown: { is: 'stock', form: 'shaped' },
  architrave: { is: 'stock', form: 'flat' },
  dentil: { is: 'stock', form: 'flat', where: { field: 'dentils', is: [true] } },
  ...FACING,
} as const;

/**
 * A frieze between an architrave and a crown with dentils under it. Architrave 1/4 of the whole (Doric: 1/2, 3/4 and
 * 3/4 of a diameter; Fenn, Design and Tradition). Dentils half as far apart as they are wide, and half as high again
 * (Ware, American Vignola); they are spread evenly, so that the gap is that or a little less.
 */
export const cornice = kindOf<typeof questions>({
  usual: { w: inches(34), h: inches(9) },
  questions,
  first: (size, has) => ({
    dentils: true,
    crown: moldingOf(has, 'base-cap', 'half-round-20'),
    architrave: boardNear(has, size.h / 4, size.h / 3),
    dentil: lathNear(has, inches(3 / 4), inches(3 / 4)),
    ...firstFacing(has),
  }),
  make: (b, answers) => {
    const { finish } = answers;
    facing(b, 'frieze', answers);
    const all = b.within(GROUND);
    railAt(b, 'architrave', 'architrave', all, { stock: answers.architrave, finish }, 'low');
    railAt(b, 'crown', 'crown', all, { stock: answers.crown, finish }, 'high');
    if (!answers.dentils) return;
    const width = b.widthOf(answers.dentil);
    row(b, 'dentils', 'dentils', 'up', { stock: answers.dentil, finish, most: width / 2 });
    b.between('dentils', 'x', all.left, all.right);
    b.set('dentils', 'y', 'high', b.edge('crown', 'low'));
    b.size('dentils', 'y', width * 1.5);
  },
});
