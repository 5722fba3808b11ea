import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { regionOfRings } from '../../src/geometry/clip.ts';
import { distance } from '../../src/geometry/point.ts';
import { areaOf } from '../../src/geometry/region.ts';
import { boxOfPoints, signedArea } from '../../src/geometry/ring.ts';
import { lookup } from '../../src/materials/lookup.ts';
import type { ShapedStock, Tables } from '../../src/materials/types.ts';
import { inches } from '../../src/measure/units.ts';

const root = new URL('../../', import.meta.url);
const table = <K extends keyof Tables>(name: K): Tables[K] =>
  JSON.parse(readFileSync(new URL(`assets/materials/${name}.json`, root), 'utf8'));
const tables: Tables = {
  materials: table('materials'),
  stocks: table('stocks'),
  brads: table('brads'),
  screws: table('screws'),
  containers: table('containers'),
  glues: table('glues'),
  tapes: table('tapes'),
  papers: table('papers'),
  mattresses: table('mattresses'),
  hardware: table('hardware'),
  fonts: table('fonts'),
};
const find = lookup(tables);
const shaped = tables.stocks.filter((s): s is ShapedStock => s.form === 'shaped');

describe('every table', () => {
  it('has ids that a design may name, each once', () => {
    for (const [name, entries] of Object.entries(tables)) {
      const ids = entries.map((e: { id: string }) => e.id);
      expect(new Set(ids).size, name).toBe(ids.length);
      for (const id of ids) expect(id).toMatch(/^[A-Za-z0-9][A-Za-z0-9_.-]*$/);
    }
  });

  it('says where each figure is from', () => {
    const { fonts, ...sourced } = tables;
    expect(fonts.length).toBeGreaterThan(0);
    for (const [name, entries] of Object.entries(sourced)) {
      for (const entry of entries) {
        const { source } = entry as { source?: string };
        expect(source, `${name} ${entry.id}`).toBeTruthy();
        // Pages that sell or quote stand beside the checks of `tests/reference`, not in what ships.
        expect(source, `${name} ${entry.id}`).not.toMatch(/\w\.(com|org|net|uk|de)\b|https?:/);
      }
    }
  });

  it('has stock of known materials, with lengths and sizes to buy', () => {
    for (const stock of tables.stocks) {
      expect(find.materialOf(stock.id), stock.id).toBeDefined();
      const sizes = stock.form === 'sheet' ? stock.sizes : stock.lengths;
      expect(sizes.length, stock.id).toBeGreaterThan(0);
      for (const size of sizes) {
        expect(size.length).toBeGreaterThan(500);
        expect(size.price).toBeGreaterThan(0);
      }
    }
  });
});

describe('sizes against their standards', () => {
  it.each([
    // PS 20 minimum dressed dry sizes, inches (check values, section 2).
    ['pine-1x2', 1.5, 0.75],
    ['pine-1x3', 2.5, 0.75],
    ['pine-1x4', 3.5, 0.75],
    ['pine-1x5', 4.5, 0.75],
    ['pine-1x6', 5.5, 0.75],
    ['pine-1x8', 7.25, 0.75],
    ['pine-1x10', 9.25, 0.75],
    ['pine-1x12', 11.25, 0.75],
    ['pine-5-4x4', 3.5, 1],
    ['spruce-2x2', 1.5, 1.5],
    ['spruce-2x4', 3.5, 1.5],
  ])('%s is %d by %d in', (id, width, thickness) => {
    const stock = find.stocks.get(id);
    if (stock?.form !== 'flat') throw new Error(`${id} is not flat stock`);
    expect(stock.width).toBeCloseTo(inches(width), 9);
    expect(stock.thickness).toBeCloseTo(inches(thickness), 9);
  });

  it.each([
    // Wood Handbook FPL-GTR-282, Table 5-3a at 12 % moisture, kg/m3 (check values, section 7).
    ['poplar', 470],
    ['red-oak', 706],
    ['white-oak', 762],
    ['maple', 706],
    ['ash', 672],
    ['cherry', 560],
    ['fir', 538],
    ['hemlock', 504],
    ['southern-pine', 571],
    ['pine', 448],
  ])('%s weighs %d kg/m3', (id, density) => {
    expect(Math.round(find.materials.get(id)?.density ?? 0)).toBe(density);
  });

  it('weighs a 4 x 8 ft sheet of MDF, 3/4 in: 42.48 kg at 750 kg/m3 (check values, section 7)', () => {
    const mdf = find.stocks.get('mdf-three-quarter');
    if (mdf?.form !== 'sheet') throw new Error('a sheet expected');
    const [sheet] = mdf.sizes;
    const volume = (sheet?.length ?? 0) * (sheet?.width ?? 0) * mdf.thickness * 1e-9;
    expect(volume * (find.materialOf(mdf.id)?.density ?? 0)).toBeCloseTo(42.48, 1);
  });

  it('weighs softwood plywood 3 lb/ft2 per inch of thickness (check values, section 7)', () => {
    // 3 lb/ft2 over 1/12 ft is 36 lb/ft3; lb = 0.45359237 kg, ft3 = 28.316846592 L.
    expect(find.materials.get('plywood')?.density).toBeCloseTo((36 * 0.45359237) / 0.028316846592, -0.5);
  });

  it.each([
    // Check values, section 9: Washburn and Moen gauge in inches; wood screw shanks in millimeters.
    ['brad-18', inches(0.0475)],
    ['nail-16', inches(0.0625)],
    ['nail-15', inches(0.072)],
    ['screw-6', 3.51],
    ['screw-8', 4.17],
    ['screw-10', 4.83],
  ])('%s is %d mm thick', (id, diameter) => {
    const fastener = [...tables.brads, ...tables.screws].find((f) => f.id === id);
    expect(fastener?.diameter).toBeCloseTo(diameter, 3);
    expect([...(fastener?.lengths ?? [])].sort((a, b) => a - b)).toEqual(fastener?.lengths);
  });

  it.each([
    // Points of 1/72 in (check values, section 3).
    ['letter', 612, 792],
    ['legal', 612, 1008],
    ['tabloid', 792, 1224],
    ['ansi-c', 1224, 1584],
    ['ansi-e', 2448, 3168],
    ['a4', 595.28, 841.89],
    ['a3', 841.89, 1190.55],
    ['a0', 2383.94, 3370.39],
  ])('%s is %d by %d points', (id, width, height) => {
    const paper = tables.papers.find((p) => p.id === id);
    expect(((paper?.width ?? 0) / 25.4) * 72).toBeCloseTo(width, 2);
    expect(((paper?.height ?? 0) / 25.4) * 72).toBeCloseTo(height, 2);
  });

  it('has a gallon of 231 cubic inches and four quarts', () => {
    const volume = (id: string) => tables.containers.find((c) => c.id === id)?.volume ?? 0;
    expect(volume('us-gallon')).toBeCloseTo(231 * 2.54 ** 3 * 1e-3, 9);
    expect(4 * volume('us-quart')).toBeCloseTo(volume('us-gallon'), 9);
  });
});

describe('sections of moldings', () => {
  it.each(shaped.map((s) => [s.id, s] as const))('%s fills its box and does not cross itself', (_, stock) => {
    const box = boxOfPoints(stock.section);
    expect(box.x).toBeCloseTo(0, 3);
    expect(box.y).toBeCloseTo(0, 3);
    expect(box.w).toBeCloseTo(stock.width, 3);
    expect(box.h).toBeCloseTo(stock.thickness, 3);
    const area = signedArea(stock.section);
    expect(area).toBeGreaterThan(0);
    for (const rule of ['evenodd', 'nonzero'] as const) {
      expect(areaOf(regionOfRings([stock.section], rule))).toBeCloseTo(area, 1);
    }
  });

  /** Length of the sides that are not hidden, walked as the brush walks them. */
  function developed(stock: ShapedStock): number {
    const slope = Math.tan(((stock.spring ?? 0) * Math.PI) / 180);
    let sum = 0;
    stock.section.forEach((a, i) => {
      const b = stock.section[(i + 1) % stock.section.length] ?? a;
      const onFace = a.y === 0 && b.y === 0;
      const onNeighbor = stock.spring !== undefined && a.x === b.x && Math.abs(a.x - stock.width) < 1e-3;
      const back =
        stock.spring !== undefined &&
        distance(a, b) > stock.width / 2 &&
        Math.abs((b.y - a.y) / (b.x - a.x) - slope) < 1e-3;
      if (!onFace && !onNeighbor && !back) sum += distance(a, b);
    });
    return sum;
  }

  it.each(shaped.map((s) => [s.id, s] as const))('%s has the girth of its visible section', (_, stock) => {
    expect(stock.girth).toBeCloseTo(developed(stock), 2);
  });

  it('has the girth of a half circle on half-round: pi r', () => {
    const stock = shaped.find((s) => s.id === 'half-round');
    expect((stock?.girth ?? 0) / ((Math.PI * inches(0.75)) / 2)).toBeCloseTo(1, 2.5);
  });

  it.each(shaped.filter((s) => s.spring !== undefined).map((s) => [s.id, s] as const))(
    '%s: height and projection follow the spring angle',
    (_, { spring = 0, boardWidth = 0, width, thickness }) => {
      expect(width).toBeCloseTo(boardWidth * Math.cos((spring * Math.PI) / 180), 3);
      expect(thickness).toBeCloseTo(boardWidth * Math.sin((spring * Math.PI) / 180), 3);
    },
  );
});

describe('fonts', () => {
  it.each(tables.fonts.map((f) => [f.id, f] as const))('%s is there, under its license', (_, font) => {
    const folder = new URL(`node_modules/${font.package}/`, root);
    expect(existsSync(new URL(font.file, folder))).toBe(true);
    const manifest = JSON.parse(readFileSync(new URL('package.json', folder), 'utf8'));
    expect(manifest.license).toBe(font.license);
  });
});

describe('lookup', () => {
  it("puts a design's stock before the table's, and knows no material for what is unknown", () => {
    const own = { ...shaped[0], id: 'pine-1x3', material: 'nowhere' } as ShapedStock;
    const both = lookup(tables, [own]);
    expect(both.stocks.get('pine-1x3')).toBe(own);
    expect(both.materialOf('pine-1x3')).toBeUndefined();
    expect(both.materialOf(null)).toBeUndefined();
    expect(both.materialOf('mdf-half')?.id).toBe('mdf');
  });
});
