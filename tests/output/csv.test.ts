import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvOf } from '../../src/output/csv/csv.ts';

/** Reads RFC 4180 by a small machine of two states. */
function readBack(csv: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < csv.length; i++) {
    const c = csv[i];
    if (quoted) {
      if (c !== '"') cell += c;
      else if (csv[i + 1] === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ',') {
      row.push(cell);
      cell = '';
    } else if (c === '\r' && csv[i + 1] === '\n') {
      rows.push([...row, cell]);
      row = [];
      cell = '';
      i++;
    } else cell += c;
  }
  return rows;
}

describe('comma-separated values', () => {
  it('come back as they went in, or with one apostrophe in front', () => {
    const cell = fc.string({ unit: 'binary' });
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { maxLength: 6 }), (rows) => {
        const back = readBack(csvOf(rows));
        expect(back.length).toBe(rows.length);
        rows.forEach((row, r) => {
          row.forEach((value, c) => {
            const got = back[r]?.[c];
            expect(got === value || got === `'${value}`).toBe(true);
          });
        });
      }),
    );
  });

  it.each(['=1+1', '+SUM(A1)', '-2+3', '@x', '\t=1', '\r=1', '＝1'])('neutralizes the formula %j', (text) => {
    expect(readBack(csvOf([[text]]))[0]?.[0]).toBe(`'${text}`);
  });

  it('leaves numbers alone, negative ones too', () => {
    expect(csvOf([[-5, '-5', '+2.5', null, 0.25]])).toBe('-5,-5,+2.5,,0.25\r\n');
  });

  it('are parted by semicolons, with a byte order mark, where the decimal mark is a comma', () => {
    // The mark in UTF-8: Unicode standard, 23.8.
    expect(csvOf([['ä', 1.5, { value: 2, digits: 2 }, 'a;b', 'a,b']], ',')).toBe(
      '\uFEFFä;1,5;2,00;"a;b";"a,b"\r\n',
    );
    expect(new TextEncoder().encode(csvOf([], ',')).slice(0, 3)).toEqual(Uint8Array.of(0xef, 0xbb, 0xbf));
    expect(csvOf([[1.5, { value: 2, digits: 2 }]])).toBe('1.5,2.00\r\n');
  });

  it('quotes what holds commas, quotes or line ends', () => {
    expect(csvOf([['1 1/2"', 'a,b', 'a\nb']])).toBe('"1 1/2""","a,b","a\nb"\r\n');
  });
});
