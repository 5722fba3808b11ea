import { describe, expect, it } from 'vitest';
import { type CuttingInput, planCutting } from '../../src/cutting/cutting.ts';
import type { Laid } from '../../src/layout/laid.ts';
import { boxStrip, brace, flat, frame, plan, run, shaped, sheet } from '../joinery/make.ts';
import { shop } from './make.ts';
import { verifyBoards } from './verifyBoards.ts';

const STOCKS = [
  flat('lath', 50),
  flat('board', 89),
  flat('batten', 20, 10),
  shaped('casing', 60),
  sheet('ply'),
];

/** Pieces as joinery makes them, cut and verified by their own outlines. */
function cut(parts: readonly (Laid<'strip'> | Laid<'run'>)[], length: number) {
  const { pieces } = plan(parts);
  const input: CuttingInput = {
    pieces,
    stocks: new Map(
      STOCKS.map((s) => [s.id, s.form === 'sheet' ? s : { ...s, lengths: [{ length, price: 5 }] }]),
    ),
    owned: [],
    shop: shop(),
    effort: { nodes: 50_000 },
  };
  const cutting = planCutting(input);
  verifyBoards(input, cutting);
  return cutting;
}

const hexagon = Array.from({ length: 6 }, (_, i) => {
  const a = (Math.PI * i) / 3;
  return { x: 1000 + 300 * Math.cos(a), y: 1000 + 300 * Math.sin(a) };
});

describe('boards for what joinery makes', () => {
  it('a frame of flat stock shares its miters, one of molding does not', () => {
    const box = { x: 0, y: 0, w: 400, h: 600 };
    const kerf = 3 * Math.SQRT2;
    const need = 2000 - 3 * (50 - kerf);
    expect(cut([frame('f', box, 50)], need + 1e-3).boards).toHaveLength(1);
    expect(cut([frame('f', box, 50)], need - 0.01).boards).toHaveLength(2);
    const molding = frame('f', box, 60, { stock: 'casing' });
    expect(cut([molding], 2000 + 3 * kerf + 1e-3).boards).toHaveLength(1);
    expect(cut([molding], 2000 + 3 * kerf - 0.01).boards).toHaveLength(2);
  });

  it('hexagons, braces and battens lie side by side without touching', () => {
    const parts = [
      run('h', hexagon, true, 50),
      frame('f', { x: 0, y: 0, w: 500, h: 700 }, 50),
      brace('b', 'rising', { x: 0, y: 1400, w: 500, h: 300 }, 50),
      brace('c', 'falling', { x: 700, y: 1400, w: 500, h: 300 }, 50),
      ...[0, 1, 2].map((i) => boxStrip(`s${i}`, 2000 + 100 * i, 0, 50, 710)),
    ];
    const { boards, boardsBound } = cut(parts, 2440);
    expect(boards.length).toBeGreaterThan(0);
    expect(boardsBound[0]?.proved).toBe(true);
  });
});
