import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing, firstFacing } from '../facing.ts';
import { kindOf } from '../kind.ts';

const questions = {
  margin: { is: 'length', least: 3, most: 300 },
  ...FACING,
} as const;

/** A plate with the slot that letters go through, painted on it. Its proportions are common practice, no source. */
export const letterPlate = kindOf<typeof questions>({
  usual: { w: inches(10), h: inches(3) },
  questions,
  first: (size, has) => ({
    margin: Math.min(300, Math.max(3, Math.min(size.w, size.h) / 3.5)),
    ...firstFacing(has),
  }),
  make: (b, answers) => {
    facing(b, 'plate', answers, { form: 'corners', cut: 'rounded', size: answers.margin / 3 });
    b.part('painted', 'slot', 'slot', { finish: answers.finish });
    b.fill('slot', b.within(GROUND), answers.margin);
  },
});
