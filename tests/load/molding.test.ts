import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Box, Point } from '../../src/geometry/shape.ts';
import type { Laid } from '../../src/layout/laid.ts';
import { massesOf } from '../../src/load/mass.ts';
import type { Material, ShapedStock } from '../../src/materials/types.ts';
import { frame, plan, run, strip } from '../joinery/make.ts';

const table = JSON.parse(readFileSync('assets/materials/stocks.json', 'utf8')) as { stocks?: unknown };
const MOLDINGS = (Array.isArray(table) ? table : (table.stocks as unknown[])).filter(
  (stock): stock is ShapedStock => (stock as ShapedStock).form === 'shaped',
);

/** A kilogram a liter, so that a gram is a cubic centimeter. */
const WATER = {
  id: 'water',
  name: '',
  density: 1000,
  color: '#ffffff',
  edgeThirst: 1,
  hardness: 'soft',
  source: '',
} as Material;

/** Mass, kg, and center of one part after its joints. */
function weigh(part: Laid<'run'> | Laid<'strip'>, molding: ShapedStock) {
  const stock = { ...molding, material: 'water' };
  const joinery = plan([{ ...part, stock: stock.id }], { stocks: [stock] });
  const { masses } = massesOf({
    solids: joinery.solids,
    parts: [part],
    stocks: [stock],
    materials: [WATER],
    coatings: [],
  });
  const [mass] = masses;
  if (!mass) throw new Error('nothing weighed');
  return mass;
}

/** Wood that stands over a point of the section's width, and the middle of its height: a plain scan. */
function over(section: readonly Point[], across: number): { wood: number; middle: number } {
  const heights: number[] = [];
  section.forEach((p, i) => {
    const q = section[(i + 1) % section.length] as Point;
    if (Math.min(p.x, q.x) <= across && across < Math.max(p.x, q.x)) {
      heights.push(p.y + ((across - p.x) / (q.x - p.x)) * (q.y - p.y));
    }
  });
  heights.sort((a, b) => a - b);
  let wood = 0;
  let moment = 0;
  for (let i = 0; i + 1 < heights.length; i += 2) {
    const [low, high] = [heights[i] as number, heights[i + 1] as number];
    wood += high - low;
    moment += ((high + low) / 2) * (high - low);
  }
  return { wood, middle: wood > 0 ? moment / wood : 0 };
}

/** Area and centroid of a section by scan lines, for the theorem of Pappus and Guldin. */
function sectionBySlices({ section, width }: ShapedStock) {
  const n = 4000;
  let area = 0;
  let moment = 0;
  for (let i = 0; i < n; i++) {
    const across = ((i + 0.5) / n) * width;
    const { wood } = over(section, across);
    area += (wood * width) / n;
    moment += (across * wood * width) / n;
  }
  return { area, centroid: moment / area };
}

describe('a frame of molding', () => {
  it('weighs the area of its section times the way of the centroid (Pappus and Guldin)', () => {
    expect(MOLDINGS.length).toBeGreaterThan(5);
    const box: Box = { x: 50, y: 80, w: 420, h: 300 };
    for (const molding of MOLDINGS) {
      const { area, centroid } = sectionBySlices(molding);
      const inside = weigh(frame('f', box, molding.width), molding);
      const way = 2 * (box.w + box.h) - 8 * centroid;
      expect(inside.mass / ((area * way) / 1e6), molding.id).toBeCloseTo(1, 4);
      expect(inside).toMatchObject({ x: expect.closeTo(260, 6), y: expect.closeTo(230, 6) });
      // Around the outside of a box the left edge of the stock lies on it, and the section counts from without.
      const outside = weigh(frame('f', box, molding.width, { side: 'outside' }), molding);
      const wayAround = 2 * (box.w + box.h) + 8 * (molding.width - centroid);
      expect(outside.mass / ((area * wayAround) / 1e6), molding.id).toBeCloseTo(1, 4);
    }
  });

  it('weighs and balances as a count over its face says, on a path that is heavier on one side', () => {
    // A right triangle of legs 300 and 400: by the nearest side of the path, 0.5 mm apart.
    const corners = [
      { x: 0, y: 0 },
      { x: 400, y: 0 },
      { x: 0, y: 300 },
    ];
    const toHypotenuse = (x: number, y: number) => (1200 - 3 * x - 4 * y) / 5;
    for (const molding of MOLDINGS.filter(({ width }) => width < 60)) {
      const sum = { mass: 0, x: 0, y: 0, z: 0 };
      const step = 0.5;
      const slices = Array.from({ length: 400 }, (_, i) =>
        over(molding.section, ((i + 0.5) / 400) * molding.width),
      );
      for (let x = step / 2; x < 400; x += step) {
        for (let y = step / 2; y < 300; y += step) {
          const across = Math.min(x, y, toHypotenuse(x, y));
          const slice = across < 0 ? undefined : slices[Math.floor((across / molding.width) * 400)];
          if (!slice) continue;
          const { wood, middle } = slice;
          sum.mass += wood * step * step;
          sum.x += x * wood * step * step;
          sum.y += y * wood * step * step;
          sum.z += middle * wood * step * step;
        }
      }
      const found = weigh(run('t', corners, true, molding.width), molding);
      expect(found.mass / (sum.mass / 1e6), molding.id).toBeCloseTo(1, 2);
      expect(Math.abs(found.x - sum.x / sum.mass), molding.id).toBeLessThan(0.5);
      expect(Math.abs(found.y - sum.y / sum.mass), molding.id).toBeLessThan(0.5);
      expect(Math.abs(found.z - sum.z / sum.mass), molding.id).toBeLessThan(0.05);
    }
  });
});

describe('a straight length of molding', () => {
  it('balances over the centroid of its section, not over the middle of its width', () => {
    for (const molding of MOLDINGS) {
      const { area, centroid } = sectionBySlices(molding);
      // Walked to the right, its right edge is the lower one.
      const found = weigh(strip('s', { x: 100, y: 200 }, { x: 600, y: 200 }, molding.width), molding);
      expect(found.mass / ((area * 500) / 1e6), molding.id).toBeCloseTo(1, 4);
      expect(found.x).toBeCloseTo(350, 6);
      expect(found.y, molding.id).toBeCloseTo(200 - molding.width / 2 + centroid, 2);
    }
  });
});
