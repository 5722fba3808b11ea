import { describe, expect, it } from 'vitest';
import { shapeMemory } from '../../src/geometry/shapeMemory.ts';
import { planPattern } from '../../src/patterns/planPatterns.ts';
import { chanceOf, pick } from '../chance.ts';
import { runs } from '../runs.ts';
import { setupOf } from './setup.ts';

describe('pages drawn again', () => {
  it('come out as from nothing after marks of a story stick were moved, added and taken away', () => {
    for (let seed = 0; seed < runs(3); seed++) {
      const chance = chanceOf(seed);
      const setup = setupOf({});
      const memory = shapeMemory();
      const anywhere = () => {
        const at = 900 * chance();
        return { at, shown: at, name: pick(['Rail', 'Left stile'], chance), edge: 'low' as const };
      };
      let marks = Array.from({ length: 12 }, anywhere);
      for (let edit = 0; edit < 4; edit++) {
        const i = Math.floor(chance() * marks.length);
        const way = pick(['move', 'add', 'remove', 'same'] as const, chance);
        if (way === 'move') marks = marks.map((one, k) => (k === i ? anywhere() : one));
        if (way === 'add') marks = [...marks, anywhere()];
        if (way === 'remove') marks = marks.filter((_, k) => k !== i);
        for (const axis of ['x', 'y'] as const) {
          const stick = { kind: 'stick', axis, length: 900, marks, measure: setup.measure } as const;
          expect(planPattern(stick, setup, memory)).toEqual(planPattern(stick, setup));
        }
      }
    }
  });

  it('look for no place again on pages where the same is taken', () => {
    const setup = setupOf({});
    const marksAt = (...places: number[]) =>
      places.map((at) => ({ at, shown: at, name: 'Rail', edge: 'low' as const }));
    const kept = shapeMemory();
    let looked = 0;
    const drawn = (marks: ReturnType<typeof marksAt>) => {
      looked = 0;
      const stick = { kind: 'stick', axis: 'y', length: 1200, marks, measure: setup.measure } as const;
      const { sets } = planPattern(stick, setup, (key, work) =>
        kept(key, () => {
          looked += 1;
          return work();
        }),
      );
      return sets.flatMap(({ pages }) => pages).length;
    };
    const pages = drawn(marksAt(100, 400, 700, 1000));
    expect(pages).toBeGreaterThan(2);
    expect(looked).toBe(pages);
    drawn(marksAt(100, 400, 700, 1010));
    expect(looked).toBe(1);
  });
});
