import { inches } from '../../../measure/units.ts';
import { newLettering } from '../../defaults.ts';
import { GROUND } from '../building.ts';
import { FACING, firstFacing } from '../facing.ts';
import { kindOf } from '../kind.ts';
import type { Answers, Supplies } from '../question.ts';
import { moldingOf } from '../stock.ts';

const questions = {
  frame: { is: 'stock', form: 'shaped' },
  ...FACING,
} as const;

/** Free room between letters and frame. Common practice, no source. */
const AROUND = inches(1 / 2);

/** What letters are painted with: the color of the frame, or else any that the board does not have. */
function inkOf({ finishes }: Supplies, { finish, field }: Answers<typeof questions>): string {
  const all = [finish, ...finishes.map(({ id }) => id)].filter((id) => id !== null);
  return all.find((id) => id !== field) ?? all[0] ?? 'trim';
}

/** A lettered board in a mitered frame; its letters are as high as it leaves room for. */
export const signBoard = kindOf<typeof questions>({
  usual: { w: inches(28), h: inches(8) },
  questions,
  first: (_, has) => {
    const first = firstFacing(has);
    return {
      frame: moldingOf(has, 'panel-molding-small', 'half-round-20'),
      ...first,
      // Letters in the color of their board could not be seen; with a single color the board stays bare.
      field: first.field === first.finish ? null : first.field,
    };
  },
  make: (b, answers) => {
    const margin = b.widthOf(answers.frame) + AROUND;
    b.part('sign', GROUND, 'board', {
      stock: answers.sheet,
      finish: answers.field,
      lettering: { ...newLettering('SIGN', inkOf(b.has, answers)), fit: 'both', margin },
    });
    b.part('run', 'frame', 'frame', { stock: answers.frame, finish: answers.finish });
    b.fill('frame', b.within(GROUND));
  },
});
