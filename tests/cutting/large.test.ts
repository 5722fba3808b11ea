import { describe, expect, it } from 'vitest';
import { type CuttingInput, planCutting } from '../../src/cutting/cutting.ts';
import type { Owned } from '../../src/design/schema.ts';
import { chanceOf } from '../chance.ts';
import { boardPiece, flat, shop, stockMap } from './make.ts';
import { verifyBoards } from './verifyBoards.ts';

/** Designs at the limits: what is searched is counted, so that they end with a sound plan instead of none. */
const NODES = 1000;
const STOCK = flat([{ length: 2400, price: 4 }]);

const planned = (pieces: CuttingInput['pieces'], owned: readonly Owned[] = []) => {
  const input: CuttingInput = {
    pieces,
    stocks: stockMap(STOCK),
    owned,
    shop: shop({ boardKerf: 3 }),
    effort: { nodes: NODES },
  };
  const cutting = planCutting(input);
  verifyBoards(input, cutting);
  return cutting;
};

describe('very many pieces of one stock', () => {
  it('hundreds whose ends are all unlike, as a path that crosses itself gives', () => {
    const chance = chanceOf(11);
    const angle = () => 90 * chance() - 45;
    const pieces = Array.from({ length: 200 }, (_, i) =>
      boardPiece(`p${i}`, 150 + 300 * chance(), [angle(), angle()]),
    );
    const { boards, boardsBound } = planned(pieces);
    expect(boards.flatMap((b) => b.cuts)).toHaveLength(200);
    const [bound] = boardsBound;
    expect(bound?.lowerBound).toBeLessThanOrEqual(bound?.used ?? 0);
  });

  it('hundreds of unlike lengths', () => {
    const chance = chanceOf(12);
    const { boards } = planned(
      Array.from({ length: 700 }, (_, i) => boardPiece(`p${i}`, 60 + 200 * chance())),
    );
    const wood = boards.flatMap((b) => b.cuts).reduce((sum, c) => sum + c.to - c.from, 0);
    // Pieces this small leave hardly anything over.
    expect(boards.length).toBeLessThan(1.1 * (wood / 2400) + 1);
  });

  it('a shed with more offcuts than any design asks for', () => {
    const owned = Array.from({ length: 500 }, (_, i): Owned => {
      const defects = Array.from({ length: 10 }, (_, k) => ({
        from: 150 * k + 90,
        to: 150 * k + 95 + (i % 40),
      }));
      return { id: `o${i}`, stock: 'strip', length: 1600, count: 500, defects };
    });
    const { boards } = planned(
      Array.from({ length: 60 }, (_, i) => boardPiece(`p${i}`, 40 + (i % 30))),
      owned,
    );
    expect(boards.every((b) => b.owned !== null)).toBe(true);
  });
});
