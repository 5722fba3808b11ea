import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { newDesign, newPart, usualBed, usualStock } from '../../src/design/defaults.ts';
import { plan } from '../../src/plan/plan.ts';
import { SUPPLIES } from '../plan/starters.ts';

describe('a start in millimeters', () => {
  it('is a bed that can be, of whole millimeters, with nothing to mend that the inch start has not', () => {
    const bed = usualBed('mm');
    expect(faceOf(bed).checks).toEqual([]);
    expect(SUPPLIES.tables.mattresses.map(({ width, length }) => [width, length])).toContainEqual([
      bed.mattress.width,
      bed.mattress.length,
    ]);
    for (const measure of JSON.stringify(bed).matchAll(/-?\d+\.\d+/g)) expect(measure[0]).toBe('');
    const codes = (of: typeof bed) => plan(newDesign(of), SUPPLIES).checks.map(({ code }) => code);
    expect(codes(bed).filter((code) => !codes(usualBed('in')).includes(code))).toEqual([]);
  });

  it('makes new parts of stock that the tables have in millimeters', () => {
    const stocks = new Map(SUPPLIES.tables.stocks.map((stock) => [stock.id, stock]));
    for (const kind of ['strip', 'run', 'panel', 'sign', 'array'] as const) {
      const id = usualStock(kind, 'mm');
      expect(usualStock(kind, 'ft-in')).toBeUndefined();
      const made = newPart(kind, {
        id: 'a',
        name: 'A',
        box: { x: 0, y: 0, w: 100, h: 100 },
        stock: id ?? '',
      });
      expect(
        made.kind === 'array' ? 'stock' in made.member && made.member.stock : 'stock' in made && made.stock,
      ).toBe(id);
      const stock = stocks.get(id ?? '');
      expect(stock, kind).toBeDefined();
      expect(Number.isInteger(stock?.thickness), kind).toBe(true);
    }
  });
});
