import { inches } from '../../../measure/units.ts';
import { newLettering } from '../../defaults.ts';
import { GROUND } from '../building.ts';
import { kindOf } from '../kind.ts';
import { finishesOf, moldingOf, sheetNear } from '../stock.ts';

const questions = {
  frame: { is: 'stock', form: 'shaped' },
  sheet: { is: 'stock', form: 'sheet' },
  finish: { is: 'finish' },
  field: { is: 'finish' },
} as const;

/** Free room between letters and frame. Common practice, no source. */
const AROUND = inches(1 / 2);

/** A lettered board in a mitered frame; its letters are as high as it leaves room for. */
export const signBoard = kindOf<typeof questions>({
  usual: { w: inches(28), h: inches(8) },
  questions,
  first: (_, has) => {
    const { ground, trim } = finishesOf(has);
    return {
      frame: moldingOf(has, 'panel-molding-small', 'half-round-20'),
      sheet: sheetNear(has, inches(1 / 4)),
      finish: trim,
      field: ground,
    };
  },
  make: (b, answers) => {
    const margin = b.widthOf(answers.frame) + AROUND;
    b.part('sign', GROUND, 'board', {
      stock: answers.sheet,
      finish: answers.field,
      lettering: { ...newLettering('SIGN', answers.finish ?? 'trim'), fit: 'both', margin },
    });
    b.part('run', 'frame', 'frame', { stock: answers.frame, finish: answers.finish });
    b.fill('frame', b.within(GROUND));
  },
});
