import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designSchema } from '../../src/design/schema.ts';
import { csvOf } from '../../src/output/csv/csv.ts';
import { pricesRows, shelfRows } from '../../src/output/csv/lists.ts';
import { csvRows } from '../../src/output/csv/readCsv.ts';
import { withPrices, withShelf } from '../../src/output/csv/readLists.ts';
import { kiosk, STARTERS, SUPPLIES, starter } from '../plan/starters.ts';

const { tables } = SUPPLIES;

describe('rows of a file', () => {
  it('come back as they were written, with either decimal mark', () => {
    const cell = fc.oneof(fc.string(), fc.constantFrom('a;b', 'a,b', '"', 'two\nlines', '=1+1', '-x', ''));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 6 }),
        fc.constantFrom('.', ','),
        (body, mark) => {
          const plain = body.map((row) => row.map((one) => one.replaceAll('\r', '')));
          // The head tells how cells are parted.
          const rows = [['kind', 'id', 'name'], ...plain];
          const guarded = (one: string) => /^'[=+\-@＝＋－＠]/.test(one);
          fc.pre(!plain.flat().some(guarded));
          const read = csvRows(csvOf(rows, mark));
          expect(read.decimalMark).toBe(mark);
          expect(read.rows).toEqual(rows);
        },
      ),
    );
  });

  it('are read as RFC 4180 has them: examples of its section 2', () => {
    expect(csvRows('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n').rows).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(csvRows('aaa,bbb,ccc\r\nzzz,yyy,xxx').rows).toHaveLength(2);
    expect(csvRows('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx').rows[0]).toEqual(['aaa', 'b\r\nbb', 'ccc']);
    expect(csvRows('"aaa","b""bb","ccc"').rows).toEqual([['aaa', 'b"bb', 'ccc']]);
  });
});

describe.each(STARTERS)('the lists of %s', (name) => {
  const design = starter(name);

  it.each(['.', ','])('read back unchanged change nothing, with the decimal mark %s', (mark) => {
    const shelf = withShelf({ design, tables }, csvOf(shelfRows({ design, tables }), mark));
    const prices = withPrices({ design, tables }, csvOf(pricesRows({ design, tables }), mark));
    if (!shelf.ok || !prices.ok) throw new Error(JSON.stringify([shelf, prices]));
    expect(shelf.design.owned).toEqual(design.owned);
    expect(shelf.design.finishes).toEqual(design.finishes);
    expect(prices.design.stocks).toEqual(design.stocks);
    expect(prices.design.finishes).toEqual(design.finishes);
    expect(designSchema.safeParse(shelf.design).success).toBe(true);
    expect(designSchema.safeParse(prices.design).success).toBe(true);
    // What has been read is written as it was.
    const again = { design: prices.design, tables };
    expect(pricesRows(again)).toEqual(pricesRows({ design, tables }));
  });
});

describe('a list that was filled in', () => {
  const design = kiosk();

  it('gives a price to a size of a stock, to a new one, to a supply and to a can', () => {
    const text = [
      'kind,id,name,container,length_mm,width_mm,price',
      'stock,pine-1x3,,,2438.4,,7.77',
      'stock,pine-1x3,,,3000,,9',
      `supply,${tables.tapes[0]?.id},,,,,4.5`,
      `paint,${design.finishes[0]?.id},,${tables.containers[0]?.id},,,12`,
    ].join('\n');
    const read = withPrices({ design, tables }, text);
    if (!read.ok) throw new Error(JSON.stringify(read));
    const stock = read.design.stocks.find(({ id }) => id === 'pine-1x3');
    if (stock?.form !== 'flat') throw new Error('no stock');
    expect(stock.lengths.find(({ length }) => length === 2438.4)?.price).toBe(7.77);
    expect(stock.lengths.find(({ length }) => length === 3000)?.price).toBe(9);
    expect(read.design.supplies?.prices[tables.tapes[0]?.id ?? '']).toBe(4.5);
    expect(read.design.finishes[0]?.containers).toContainEqual({
      container: tables.containers[0]?.id,
      price: 12,
    });
    expect(designSchema.safeParse(read.design).success).toBe(true);
  });

  it('is the whole shelf', () => {
    const text = [
      'kind;id;name;length_mm;width_mm;count;liters;defects_mm',
      'offcut;pine-1x3;;762,5;;2;;100-150',
      'glue;;;;;;0,25;',
    ].join('\r\n');
    const read = withShelf({ design, tables }, text);
    if (!read.ok) throw new Error(JSON.stringify(read));
    expect(read.design.owned).toEqual([
      { id: 'on-hand-1', stock: 'pine-1x3', length: 762.5, count: 2, defects: [{ from: 100, to: 150 }] },
    ]);
    expect(read.design.supplies?.owned.glue_l).toBe(0.25);
    expect(designSchema.safeParse(read.design).success).toBe(true);
  });

  it('is refused whole, with every row that is wrong named', () => {
    const text = [
      'kind,id,name,length_mm,width_mm,count,liters,defects_mm',
      'offcut,no-such-stock,,100,,1,,',
      'offcut,pine-1x3,,abc,,1,,',
      'offcut,pine-1x3,,100,,1.5,,',
      'shelf,,,,,,,',
    ].join('\n');
    const read = withShelf({ design, tables }, text);
    expect(read.ok ? [] : read.problems.map(({ line, column }) => `${line} ${column}`)).toEqual([
      '2 id',
      '3 length_mm',
      '4 count',
      '5 kind',
    ]);
    expect(withPrices({ design, tables }, 'a,b\n1,2').ok).toBe(false);
  });
});
