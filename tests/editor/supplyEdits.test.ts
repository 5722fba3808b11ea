import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/design/edit/edit.ts';
import { designSchema } from '../../src/design/schema.ts';
import { supplyEdits } from '../../src/editor/edit/supplyEdits.ts';
import { csvOf } from '../../src/output/csv/csv.ts';
import { pricesRows, shelfRows } from '../../src/output/csv/lists.ts';
import { withPrices, withShelf } from '../../src/output/csv/readLists.ts';
import { kiosk, SUPPLIES } from '../plan/starters.ts';

const { tables } = SUPPLIES;
const design = kiosk();

/** The list of prices with some of them entered, at random. */
const prices = fc
  .array(fc.option(fc.integer({ min: 1, max: 9999 })), { minLength: 1, maxLength: 30 })
  .map((entered) => {
    const [head = [], ...rows] = pricesRows({ design, tables });
    const told = rows.map((row, i) => {
      const price = entered[i % entered.length];
      return price == null ? row : [...row.slice(0, -1), price / 100];
    });
    return withPrices({ design, tables }, csvOf([head, ...told]));
  });

/** Shelves of a few offcuts, some of them alike, in any order. */
const shelf = fc
  .array(fc.record({ length: fc.constantFrom(300, 600, 900), count: fc.integer({ min: 1, max: 2 }) }), {
    maxLength: 6,
  })
  .map((offcuts) => ({
    ...design,
    owned: offcuts.map((one, i) => ({ ...one, id: `o-${i}`, stock: 'pine-1x3', defects: [] })),
  }));

describe('what a list from a spreadsheet changes', () => {
  const check = (before: typeof design, after: typeof design) => {
    const done = applyEdits(before, supplyEdits(before, after));
    if (!done.ok) throw new Error(JSON.stringify(done.problem));
    expect(done.design).toEqual(after);
    const back = applyEdits(done.design, done.inverse);
    expect(back.ok && back.design).toEqual(before);
    expect(designSchema.safeParse(done.design).success).toBe(true);
    expect(supplyEdits(after, after)).toEqual([]);
  };

  it('of prices is carried out by its edits and taken back in one step', () => {
    fc.assert(
      fc.property(prices, (read) => {
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        check(design, read.design);
      }),
      { numRuns: 30 },
    );
  });

  it('of the shelf too, with an id of its own for every offcut, and none where the file says what is there', () => {
    fc.assert(
      fc.property(shelf, shelf, (before, wanted) => {
        const read = withShelf({ design: before, tables }, csvOf(shelfRows({ design: wanted, tables })));
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        expect(new Set(read.design.owned.map(({ id }) => id)).size).toBe(wanted.owned.length);
        check(before, read.design);
        const same = withShelf({ design: before, tables }, csvOf(shelfRows({ design: before, tables })));
        expect(same.ok && supplyEdits(before, same.design)).toEqual(before.supplies ? [] : expect.anything());
      }),
      { numRuns: 60 },
    );
  });
});
