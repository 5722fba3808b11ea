import { describe, expect, it } from 'vitest';
import { planBoards } from '../../src/cutting/boards/boards.ts';
import { budgetOf } from '../../src/cutting/budget.ts';
import { type CuttingInput, planCutting } from '../../src/cutting/cutting.ts';
import { chanceOf } from '../chance.ts';
import { boardPiece, flat, sheet, sheetPiece, shop, stockMap } from './make.ts';
import { verifyBoards } from './verifyBoards.ts';
import { verifySheets } from './verifySheets.ts';

const NODES = 6000;
const LENGTHS = [
  { length: 2440, price: 6 },
  { length: 3660, price: 9 },
];
const SIZES = [
  { length: 2440, width: 1220, price: 40 },
  { length: 1220, width: 610, price: 14 },
];

function strips(count: number, seed: number) {
  const chance = chanceOf(seed);
  const angle = () => 80 * chance() - 40;
  return Array.from({ length: count }, (_, i) =>
    boardPiece(`p${i}`, 300 + 900 * chance(), [angle(), angle()]),
  );
}

describe('the plan that is found soon', () => {
  it('of many strips with unlike ends takes few steps, can be cut, and is within a tenth of the least', () => {
    for (let seed = 1; seed <= 3; seed++) {
      const count = 80 + 20 * seed;
      const pieces = strips(count, seed);
      const stock = flat(LENGTHS);
      const budget = budgetOf(NODES);
      const { boards, bound, checks } = planBoards(
        { stock, pieces, owned: [], shop: shop(), soon: true },
        budget,
      );
      expect(NODES - budget.left).toBeLessThan(10 * count);
      expect(bound?.cost).toBeLessThanOrEqual(1.1 * (bound?.lowerCost ?? 0));
      const input = { pieces, stocks: stockMap(stock), owned: [], shop: shop(), effort: { nodes: NODES } };
      const boardsBound = bound ? [bound] : [];
      verifyBoards(input, { boards, boardsBound, sheets: [], sheetsBound: [], checks });
    }
  });

  it('of many panels can be cut', () => {
    const chance = chanceOf(7);
    const pieces = Array.from({ length: 120 }, (_, i) =>
      sheetPiece(`p${i}`, Math.round(120 + 800 * chance()), Math.round(100 + 500 * chance())),
    );
    const input: CuttingInput = {
      pieces,
      stocks: stockMap(sheet(SIZES)),
      owned: [],
      shop: shop(),
      effort: { nodes: NODES },
      soon: true,
    };
    const cutting = planCutting(input);
    verifySheets(input, cutting);
    expect(cutting.sheets.flatMap((s) => s.placements)).toHaveLength(120);
  });
});
