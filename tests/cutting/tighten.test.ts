import { describe, expect, it } from 'vitest';
import { type CuttingInput, planCutting } from '../../src/cutting/cutting.ts';
import { shuffler } from '../../src/cutting/random.ts';
import type { SheetItem, SheetProblem } from '../../src/cutting/sheets/problem.ts';
import { setsBelow } from '../../src/cutting/sheets/tighten.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';
import { sheet, sheetPiece, shop, stockMap } from './make.ts';
import { verifySheets } from './verifySheets.ts';

const SIZES = [
  { length: 2440, width: 1220, price: 40 },
  { length: 1220, width: 1220, price: 24 },
  { length: 1220, width: 610, price: 14 },
];

describe('many panels', () => {
  // Without large pieces being worth more for their size, the last two took a quarter of a sheet more.
  it.each([
    { count: 40, seed: 3 },
    { count: 80, seed: 80 },
    { count: 80, seed: 5 },
    { count: 160, seed: 7 },
  ])(
    'are cut from sheets with so little waste that no less money could do: $count, $seed',
    ({ count, seed }) => {
      const chance = shuffler(seed);
      const kinds = Array.from(
        { length: Math.ceil(count / 3) },
        () => [120 + 800 * chance(), 100 + 500 * chance()] as const,
      );
      const pieces = Array.from({ length: count }, (_, i) => {
        const [w, h] = kinds[Math.floor(chance() * kinds.length)] ?? [0, 0];
        return sheetPiece(`p${i}`, Math.round(w), Math.round(h));
      });
      const input: CuttingInput = {
        pieces,
        stocks: stockMap(sheet(SIZES)),
        owned: [],
        shop: shop(),
        effort: { nodes: 200_000 },
      };
      const cutting = planCutting(input);
      verifySheets(input, cutting);
      const [bound] = cutting.sheetsBound;
      expect(bound).toMatchObject({ proved: true, cost: bound?.lowerCost });
      const soon = planCutting({ ...input, soon: true }).sheetsBound[0];
      expect(soon?.cost).toBeGreaterThan(bound?.cost ?? 0);
    },
  );
});

describe('sets of sheets lighter than a plan', () => {
  /** By counting: every set of up to so many of each kind. */
  function bySight(p: SheetProblem, under: number, bound: number): number[][] {
    const area = p.items.reduce((sum, i) => sum + i.area * i.count, 0);
    const [a, b] = p.bins;
    if (!a || !b) throw new Error('two kinds of sheets expected');
    const sets: number[][] = [];
    for (let m = 0; m < 30; m++) {
      for (let n = 0; n < 30; n++) {
        const weight = m * a.weight + n * b.weight;
        if (weight >= bound && weight < under && m * a.w * a.h + n * b.w * b.h >= area) sets.push([m, n]);
      }
    }
    return sets;
  }

  it('are light enough and large enough, and every set that is left out has a lighter one that is hardly smaller', () => {
    const chance = chanceOf(5);
    const whole = (from: number, to: number) => from + Math.floor(chance() * (to - from));
    for (let run = 0; run < runs(200); run++) {
      const bin = () => ({ w: whole(10, 50), h: whole(10, 50), weight: whole(10, 60), limit: Infinity });
      const area = whole(500, 9000);
      const items: SheetItem[] = [{ ways: [{ w: 1, h: area, turned: false }], count: 1, area }];
      const p: SheetProblem = { items, bins: [bin(), bin()], roundUp: Math.ceil };
      const under = whole(50, 200);
      const bound = whole(0, under);
      const all = bySight(p, under, bound);
      const kept = setsBelow(p, under, bound);
      const sum = (set: readonly number[], of: 'weight' | 'area') =>
        set.reduce((s, n, k) => {
          const b = p.bins[k];
          return s + n * (b ? (of === 'weight' ? b.weight : b.w * b.h) : 0);
        }, 0);
      for (const set of kept) expect(all).toContainEqual(set);
      for (const set of all) {
        const as = kept.some(
          (k) =>
            sum(k, 'weight') <= sum(set, 'weight') && 1.02 * sum(k, 'area') >= sum(set, 'area') * (1 - 1e-9),
        );
        expect(as).toBe(true);
      }
    }
  });
});
