import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { type CuttingInput, planCutting } from '../../src/cutting/cutting.ts';
import { runs } from '../runs.ts';
import { boardPiece, flat, ownedBoard, shop, stockMap } from './make.ts';
import { type Oracle, openOracle } from './oracle.ts';
import { verifyBoards } from './verifyBoards.ts';

const KERF = 3;

describe('boards against an integer program', () => {
  let oracle: Oracle;
  beforeAll(async () => {
    oracle = await openOracle();
  });

  const item = fc.record({
    length: fc.integer({ min: 250, max: 1600 }),
    count: fc.integer({ min: 1, max: 7 }),
  });
  const board = fc.record({
    length: fc.integer({ min: 1700, max: 4000 }),
    price: fc.integer({ min: 4, max: 20 }),
  });

  it('several lengths, prices and owned boards: never under the least, and the least where proved', () => {
    let proved = 0;
    let solved = 0;
    fc.assert(
      fc.property(
        fc.uniqueArray(item, { minLength: 2, maxLength: 6, selector: (i) => i.length }),
        fc.uniqueArray(board, { minLength: 1, maxLength: 3, selector: (b) => b.length }),
        fc.array(fc.integer({ min: 500, max: 2500 }), { maxLength: 2 }),
        (items, boards, kept) => {
          const pieces = items.flatMap(({ length, count }, i) =>
            Array.from({ length: count }, (_, k) => boardPiece(`p${i}-${k}`, length)),
          );
          const owned = kept.map((length, i) => ownedBoard(`o${i}`, length));
          const input: CuttingInput = {
            pieces,
            stocks: stockMap(flat(boards)),
            owned,
            shop: shop({ boardKerf: KERF }),
            effort: { nodes: 150_000 },
          };
          const cutting = planCutting(input);
          verifyBoards(input, cutting);
          const least = oracle(
            items.map((i) => ({ size: i.length + KERF, count: i.count })),
            [
              ...boards.map((b) => ({ room: b.length + KERF, price: b.price })),
              ...owned.map((o) => ({ room: o.length + KERF, price: 0, count: 1 })),
            ],
          );
          const [bound] = cutting.boardsBound;
          const cost = bound?.cost ?? 0;
          solved += 1;
          expect(bound?.lowerCost).toBeLessThanOrEqual(least.cost);
          expect(bound?.lowerBound).toBeLessThanOrEqual(least.count);
          expect(cost).toBeGreaterThanOrEqual(least.cost);
          if (bound?.proved) {
            proved += 1;
            expect(cost).toBe(least.cost);
          } else expect(cost).toBeLessThanOrEqual(least.cost * 1.03);
        },
      ),
      { numRuns: runs(15), seed: 7 },
    );
    expect(proved / solved).toBeGreaterThan(0.9);
  });
});
