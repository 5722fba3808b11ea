import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { kindOf } from '../kind.ts';
import { length } from '../question.ts';

/** A plate with the slot that letters go through, painted on it. Its proportions are common practice, no source. */
export const letterPlate = kindOf({
  usual: { w: inches(10), h: inches(3) },
  questions: {
    margin: length(3, 300, ({ w, h }) => Math.min(w, h) / 3.5),
    ...FACING,
  },
  make: (b, answers) => {
    facing(b, 'plate', answers, { form: 'corners', cut: 'rounded', size: answers.margin / 3 });
    b.part('painted', 'slot', 'slot', { finish: answers.finish });
    b.fill('slot', b.within(GROUND), answers.margin);
  },
});
