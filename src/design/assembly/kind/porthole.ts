import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { kindOf } from '../kind.ts';
import { finishesOf, sheetNear } from '../stock.ts';

const questions = {
  width: { is: 'length', least: 10, most: 300 },
  bolts: { is: 'yes' },
  ring: { is: 'stock', form: 'sheet' },
  finish: { is: 'finish' },
  glass: { is: 'finish' },
} as const;

/** A dome nut as it is sold for fixtures; size, height and mass from memory. */
const NUT = { size: inches(1 / 2), depth: inches(3 / 8), mass_kg: 0.01 };

/** A round window in a ring with a nut at each quarter. Its proportions are common practice, no source. */
export const porthole = kindOf<typeof questions>({
  usual: { w: inches(12), h: inches(12) },
  questions,
  first: (size, has) => {
    const { finish, field } = finishesOf(has);
    const width = Math.min(300, Math.max(10, Math.min(size.w, size.h) / 7));
    return { width, bolts: true, ring: sheetNear(has, inches(3 / 4)), finish, glass: field };
  },
  make: (b, { width, bolts, ring, finish, glass }) => {
    b.part('painted', GROUND, 'glass', { finish: glass, shape: { form: 'round' } });
    const all = b.within(GROUND);
    b.part('panel', 'ring', 'ring', { stock: ring, finish, shape: { form: 'ring', width } });
    b.fill('ring', all);
    if (!bolts) return;
    const { size, depth, mass_kg } = NUT;
    const inset = (width - size) / 2;
    const nuts = [
      ['x', 'y', 'low', all.bottom, inset],
      ['x', 'y', 'high', all.top, -inset],
      ['y', 'x', 'low', all.left, inset],
      ['y', 'x', 'high', all.right, -inset],
    ] as const;
    nuts.forEach(([middle, along, side, edge, by], i) => {
      const role = `nut-${i + 1}`;
      const own = { shape: { form: 'round' }, depth, mass_kg, on: b.id('ring') } as const;
      b.part('fitting', role, { noun: 'nut', number: i + 1 }, own);
      b.size(role, 'x', size);
      b.size(role, 'y', size);
      b.center(role, middle, b.edge(GROUND, 'low'), b.edge(GROUND, 'high'));
      b.set(role, along, side, edge, by);
    });
  },
});
