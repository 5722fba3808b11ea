import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { kindOf } from '../kind.ts';
import { FIELD, FINISH, length, stock, yes } from '../question.ts';
import { sheetNear } from '../stock.ts';

/** A round window in a ring with a nut at each quarter. Its proportions are common practice, no source. */
export const porthole = kindOf({
  usual: { w: inches(12), h: inches(12) },
  questions: {
    width: length(10, 300, ({ w, h }) => Math.min(w, h) / 7),
    bolts: yes(true),
    ring: stock('sheet', (_, has) => sheetNear(has, inches(3 / 4))),
    finish: FINISH,
    glass: FIELD,
  },
  make: (b, { width, bolts, ring, finish, glass }) => {
    b.part('painted', GROUND, 'glass', { finish: glass, shape: { form: 'round' } });
    const all = b.within(GROUND);
    b.part('panel', 'ring', 'ring', { stock: ring, finish, shape: { form: 'ring', width } });
    b.fill('ring', all);
    if (!bolts) return;
    const nuts = [
      ['x', 'y', all.bottom, width / 2],
      ['x', 'y', all.top, -width / 2],
      ['y', 'x', all.left, width / 2],
      ['y', 'x', all.right, -width / 2],
    ] as const;
    nuts.forEach(([middle, along, edge, by], i) => {
      const role = `nut-${i + 1}`;
      b.hardware(role, { noun: 'nut', number: i + 1 }, { entry: 'nut-dome', on: 'ring' });
      b.center(role, middle, b.edge(GROUND, 'low'), b.edge(GROUND, 'high'));
      b.set(role, along, 'mid', edge, by);
    });
  },
});
