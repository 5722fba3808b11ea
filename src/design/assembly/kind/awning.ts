import { inches } from '../../../measure/units.ts';
import type { PanelShape } from '../../schema.ts';
import { GROUND } from '../building.ts';
import { FACING } from '../facing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { choice, count, length } from '../question.ts';

const stripes = count(0, 12, ({ w }) => Math.max(2, w / inches(5)));

/** A striped cloth, painted, with a valance of sheet at its lower edge. Its proportions are common practice, no source. */
export const awning = kindOf({
  usual: { w: inches(32), h: inches(10) },
  questions: {
    stripes,
    edge: choice(['scalloped', 'straight'], 'scalloped'),
    // A scallop under each stripe and under each gap between two.
    scallops: count(1, 40, (...space) => 2 * stripes.first(...space) + 1, {
      field: 'edge',
      is: ['scalloped'],
    }),
    valance: length(20, 600, ({ h }) => h / 3),
    ...FACING,
  },
  make: (b, answers) => {
    const depth = answers.valance / 3;
    const shape: PanelShape =
      answers.edge === 'scalloped'
        ? { form: 'scalloped', count: answers.scallops, depth, toward: 'down' }
        : { form: 'rectangle' };
    b.part('painted', GROUND, 'cloth', { finish: answers.field, shape });
    const all = b.within(GROUND);
    b.part('panel', 'valance', 'valance', {
      stock: answers.sheet,
      finish: answers.finish,
      shape,
    });
    b.between('valance', 'x', all.left, all.right);
    b.set('valance', 'y', 'low', all.bottom);
    b.size('valance', 'y', answers.valance);
    const stripes = upTo(answers.stripes).map((number) => {
      const role = `stripe-${number}`;
      b.part('painted', role, { noun: 'stripe', number }, { finish: answers.finish });
      b.between(role, 'y', b.edge('valance', 'high'), all.top);
      return role;
    });
    b.stripes(stripes, 'x', all.left, all.right);
  },
});
