import { expect, it } from 'vitest';
import { courseOf, courseWithin, firstHit, sidesOf } from '../../src/lettering/stencil/solid.ts';
import { chanceOf } from '../chance.ts';

/** A ring of corners at chance, some of them on round places, so that rays run through corners and along sides. */
function ring(chance: () => number) {
  return Array.from({ length: 40 }, () => {
    const [x, y] = [100 * chance(), 100 * chance()];
    return chance() < 0.3 ? { x: Math.round(x / 10) * 10, y: Math.round(y / 10) * 10 } : { x, y };
  });
}

// Its twin is the look along a ray over all sides, which knows nothing of bands.
it('finds along every ray within a band the side that all sides give', () => {
  const chance = chanceOf(11);
  let met = 0;
  for (let round = 0; round < 200; round++) {
    const sides = sidesOf(ring(chance), round);
    const all = courseOf(sides);
    const turn = chance() < 0.3 ? (Math.PI / 2) * Math.floor(4 * chance()) : 2 * Math.PI * chance();
    const along = { x: Math.cos(turn), y: Math.sin(turn) };
    const middle = { x: Math.round(10 * chance()) * 10, y: 100 * chance() };
    const half = 1 + 9 * chance();
    const within = courseWithin(all, middle, along, 1.02 * half);
    expect(within.sides.length).toBeLessThanOrEqual(sides.length);
    for (const share of [-1, -0.5, 0, 0.5, 1]) {
      const from = { x: middle.x - share * half * along.y, y: middle.y + share * half * along.x };
      for (const way of [along, { x: -along.x, y: -along.y }]) {
        const hit = firstHit(all, from, way);
        expect(firstHit(within, from, way)).toEqual(hit);
        if (hit) met += 1;
      }
    }
  }
  expect(met).toBeGreaterThan(1000);
});
