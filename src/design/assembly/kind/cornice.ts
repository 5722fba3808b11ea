import { inches } from '../../../measure/units.ts';
import { GLUED, GROUND } from '../building.ts';
import { rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { row } from '../row.ts';
import { boardNear, finishesOf, lathNear, moldingOf, sheetNear } from '../stock.ts';

const questions = {
  dentils: { is: 'yes' },
  crown: { is: 'stock', form: 'shaped' },
  architrave: { is: 'stock', form: 'flat' },
  dentil: { is: 'stock', form: 'flat', where: { field: 'dentils', is: [true] } },
  sheet: { is: 'stock', form: 'sheet' },
  finish: { is: 'finish' },
  field: { is: 'finish' },
} as const;

/**
 * A frieze between an architrave and a crown with dentils under it. Architrave 1/4 of the whole (Doric: 1/2, 3/4 and
 * 3/4 of a diameter; Fenn, Design and Tradition). Dentils half as far apart as they are wide, and half as high again
 * (Ware, American Vignola); they are spread evenly, so that the gap is that or a little less.
 */
export const cornice = kindOf<typeof questions>({
  usual: { w: inches(34), h: inches(9) },
  questions,
  first: (size, has) => {
    const { ground, trim } = finishesOf(has);
    return {
      dentils: true,
      crown: moldingOf(has, 'base-cap', 'half-round-20'),
      architrave: boardNear(has, size.h / 4, size.h / 3),
      dentil: lathNear(has, inches(3 / 4), inches(3 / 4)),
      sheet: sheetNear(has, inches(1 / 4)),
      finish: trim,
      field: ground,
    };
  },
  make: (b, answers) => {
    const { finish } = answers;
    b.part('panel', GROUND, 'frieze', { stock: answers.sheet, finish: answers.field, fixing: GLUED });
    const all = b.within(GROUND);
    rail(b, 'architrave', 'architrave', all, { stock: answers.architrave, finish });
    b.set('architrave', 'y', 'low', all.bottom);
    rail(b, 'crown', 'crown', all, { stock: answers.crown, finish });
    b.set('crown', 'y', 'high', all.top);
    if (!answers.dentils) return;
    const width = b.widthOf(answers.dentil);
    row(b, 'dentils', 'dentils', 'up', { stock: answers.dentil, finish, most: width / 2 });
    b.between('dentils', 'x', all.left, all.right);
    b.set('dentils', 'y', 'high', b.edge('crown', 'low'));
    b.size('dentils', 'y', width * 1.5);
  },
});
