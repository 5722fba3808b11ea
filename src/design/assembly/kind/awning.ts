import { inches } from '../../../measure/units.ts';
import type { PanelShape } from '../../schema.ts';
import { GROUND } from '../building.ts';
import { FACING, firstFacing } from '../facing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';

const questions = {
  stripes: { is: 'count', least: 0, most: 12 },
  edge: { is: 'choice', of: ['scalloped', 'straight'] },
  scallops: { is: 'count', least: 1, most: 40, where: { field: 'edge', is: ['scalloped'] } },
  valance: { is: 'length', least: 20, most: 600 },
  ...FACING,
} as const;

/** A striped cloth, painted, with a valance of sheet at its lower edge. Its proportions are common practice, no source. */
export const awning = kindOf<typeof questions>({
  usual: { w: inches(32), h: inches(10) },
  questions,
  first: (size, has) => {
    const stripes = Math.min(12, Math.max(2, Math.round(size.w / inches(5))));
    return {
      stripes,
      edge: 'scalloped',
      // A scallop under each stripe and under each gap between two.
      scallops: Math.min(40, 2 * stripes + 1),
      valance: Math.max(20, size.h / 3),
      ...firstFacing(has),
    };
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
