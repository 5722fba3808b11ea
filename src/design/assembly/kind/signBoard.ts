import { inches } from '../../../measure/units.ts';
import { newLettering } from '../../defaults.ts';
import type { PanelShape } from '../../schema.ts';
import { GROUND } from '../building.ts';
import { FACING, firstFacing } from '../facing.ts';
import { kindOf } from '../kind.ts';
import type { Answers, Supplies } from '../question.ts';
import { moldingOf } from '../stock.ts';

const questions = {
  shape: { is: 'choice', of: ['rectangle', 'arched', 'ribbon', 'shield', 'coved'] },
  rise: { is: 'length', least: 5, most: 1500, where: { field: 'shape', is: ['arched'] } },
  ends: { is: 'length', least: 5, most: 1500, where: { field: 'shape', is: ['ribbon', 'coved'] } },
  point: { is: 'length', least: 5, most: 1500, where: { field: 'shape', is: ['shield'] } },
  frame: { is: 'stock', form: 'shaped', where: { field: 'shape', is: ['rectangle', 'arched'] } },
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
  first: (size, has) => {
    const first = firstFacing(has);
    return {
      shape: 'rectangle',
      rise: Math.max(5, Math.min(size.w / 2, size.h) / 3),
      ends: Math.max(5, Math.min(size.w, size.h) / 5),
      point: Math.max(5, Math.min(size.w / 4, 0.6 * size.h)),
      frame: moldingOf(has, 'panel-molding-small', 'half-round-20'),
      ...first,
      // Letters in the color of their board could not be seen; with a single color the board stays bare.
      field: first.field === first.finish ? null : first.field,
    };
  },
  make: (b, answers) => {
    const framed = answers.shape === 'rectangle' || answers.shape === 'arched';
    // Below an arch, the outer letters stand half way up it.
    const under = answers.shape === 'arched' ? answers.rise / 2 : 0;
    // Letters reach into a point to where they are as high as it is.
    const cut = answers.shape === 'shield' ? answers.point / 3 : answers.ends;
    const margin = framed ? b.widthOf(answers.frame) + AROUND + under : Math.max(AROUND, cut);
    b.part('sign', GROUND, 'board', {
      shape: shapeOf(answers),
      stock: answers.sheet,
      finish: answers.field,
      lettering: { ...newLettering('SIGN', inkOf(b.has, answers)), fit: 'both', margin },
    });
    if (!framed) return;
    const path = answers.shape === 'arched' ? ({ form: 'arched', rise: answers.rise } as const) : FRAME;
    b.part('run', 'frame', 'frame', { stock: answers.frame, finish: answers.finish, path });
    b.fill('frame', b.within(GROUND));
  },
});

const FRAME = { form: 'frame' } as const;

function shapeOf({ shape, rise, ends, point }: Answers<typeof questions>): PanelShape {
  switch (shape) {
    case 'rectangle':
      return { form: shape };
    case 'arched':
      return { form: shape, rise };
    case 'ribbon':
      return { form: shape, notch: ends };
    case 'shield':
      return { form: shape, point };
    case 'coved':
      return { form: 'corners', cut: shape, size: ends };
  }
}
