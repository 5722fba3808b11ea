import fc from 'fast-check';
import { expect, it } from 'vitest';
import { grouped } from '../../src/list/grouped.ts';

it('puts every value with those of its key, in the order in which they come (twin: filters)', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.integer({ min: 0, max: 5 }), fc.string())), (pairs) => {
      const keys = [...new Set(pairs.map(([key]) => key))];
      expect([...grouped(pairs, ([key]) => key)]).toEqual(
        keys.map((key) => [key, pairs.filter(([own]) => own === key)]),
      );
    }),
  );
});
