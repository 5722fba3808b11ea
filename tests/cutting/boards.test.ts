import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CuttingInput, planCutting } from '../../src/cutting/cutting.ts';
import type { Shop } from '../../src/design/schema.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { runs } from '../runs.ts';
import { bruteBoards } from './bruteBoards.ts';
import { boardPiece, end, flat, ownedBoard, shaped, shop, stockMap } from './make.ts';
import { verifyBoards } from './verifyBoards.ts';

const plan = (
  pieces: readonly Piece[],
  stock: ReturnType<typeof flat> | ReturnType<typeof shaped>,
  change: Partial<Shop> = {},
  owned: CuttingInput['owned'] = [],
) => {
  const input: CuttingInput = {
    pieces,
    stocks: stockMap(stock),
    owned,
    shop: shop(change),
    effort: { nodes: 200_000 },
  };
  const cutting = planCutting(input);
  verifyBoards(input, cutting);
  return cutting;
};

const several = (n: number, length: number, miters: readonly [number, number] = [0, 0]): Piece[] =>
  Array.from({ length: n }, (_, i) => boardPiece(`p${i}`, length, miters));

describe('boards', () => {
  it('takes a kerf between pieces and none at the ends', () => {
    // 4 x 498.5 + 3 x 2 = 2000 exactly.
    expect(plan(several(4, 498.5), flat([{ length: 2000, price: 5 }]), { boardKerf: 2 }).boards).toHaveLength(
      1,
    );
    expect(
      plan(several(4, 498.51), flat([{ length: 2000, price: 5 }]), { boardKerf: 2 }).boards,
    ).toHaveLength(2);
  });

  it('cuts the trim off both ends of a bought board but not of an owned one', () => {
    const stock = flat([{ length: 1000, price: 1 }]);
    const [board] = plan([boardPiece('a', 980)], stock, { endTrim: 10 }).boards;
    expect(board?.cuts[0]).toMatchObject({ from: 10, to: 990 });
    const [kept] = plan([boardPiece('a', 980)], stock, { endTrim: 10 }, [ownedBoard('o', 985)]).boards;
    expect(kept).toMatchObject({ owned: 'o', cost: 0, cuts: [{ from: 0, to: 980 }] });
  });

  it('lets neighbors share a miter: a kerf over its cosine, less the slant', () => {
    // Four 500 mm frame sides at 45 degrees on 40 mm stock: 2000 - 3 x (40 - 3 / cos 45) = 1892.73 mm.
    const need = 2000 - 3 * (40 - 3 * Math.SQRT2);
    const frame = several(4, 500, [45, 45]);
    const cutting = plan(frame, flat([{ length: need + 1e-3, price: 1 }]));
    expect(cutting.boards).toHaveLength(1);
    expect(cutting.boards[0]?.cuts.map((c) => c.flipped)).toEqual([false, true, false, true]);
    expect(cutting.boards[0]?.cuts.at(-1)?.to).toBeCloseTo(need, 9);
    expect(plan(frame, flat([{ length: need - 0.01, price: 1 }])).boards).toHaveLength(2);
  });

  it('never turns a molding, which then pays for every miter twice', () => {
    const frame = several(4, 500, [45, 45]);
    const need = 2000 + 3 * 3 * Math.SQRT2;
    expect(plan(frame, shaped([{ length: need + 1e-3, price: 1 }])).boards).toHaveLength(1);
    expect(plan(frame, shaped([{ length: need - 0.01, price: 1 }])).boards).toHaveLength(2);
  });

  it('shares the miters of braces without turning them', () => {
    // A parallelogram: right and left ends are parallel as they lie.
    const need = 2000 - 3 * (40 * Math.tan(Math.PI / 6) - 3 / Math.cos(Math.PI / 6));
    const cutting = plan(several(4, 500, [30, -30]), shaped([{ length: need + 1e-3, price: 1 }]));
    expect(cutting.boards).toHaveLength(1);
  });

  it('gives a tilted end its whole length and a kerf over both cosines', () => {
    const ends = [end(0, 0), end(31.6, 33.9)] as const;
    const a = boardPiece('a', 500, [0, 0], { ends });
    const b = boardPiece('b', 500, [0, 0], { ends });
    const kerf = 3 / (Math.cos((31.6 * Math.PI) / 180) * Math.cos((33.9 * Math.PI) / 180));
    const input = (length: number): CuttingInput => ({
      pieces: [a, b],
      stocks: stockMap(shaped([{ length, price: 1 }])),
      owned: [],
      shop: shop(),
      effort: { nodes: 1000 },
    });
    expect(planCutting(input(1000 + kerf + 1e-3)).boards).toHaveLength(1);
    expect(planCutting(input(1000 + kerf - 1e-3)).boards).toHaveLength(2);
  });

  it('chooses lengths by price, not by count', () => {
    const stock = flat([
      { length: 1000, price: 2 },
      { length: 3000, price: 9 },
    ]);
    const cutting = plan(several(3, 900), stock);
    expect(cutting.boards.map((b) => b.length)).toEqual([1000, 1000, 1000]);
    expect(cutting.boardsBound).toEqual([
      { stock: 'strip', used: 3, lowerBound: 1, cost: 6, lowerCost: 6, proved: true },
    ]);
  });

  it('buys the least wood where nothing has a price, and reckons an unknown price dearly', () => {
    const unpriced = flat([
      { length: 2000, price: 0 },
      { length: 3000, price: 0 },
    ]);
    expect(plan([boardPiece('a', 1500)], unpriced).boards.map((b) => b.length)).toEqual([2000]);
    const mixed = flat([
      { length: 2000, price: 4 },
      { length: 2400, price: 0 },
    ]);
    expect(plan([boardPiece('a', 1500)], mixed).boards.map((b) => b.length)).toEqual([2000]);
  });

  it('uses owned boards first and no more of them than there are', () => {
    const cutting = plan(several(5, 600), flat([{ length: 1300, price: 3 }]), {}, [ownedBoard('o', 650, 3)]);
    expect(cutting.boards.filter((b) => b.owned === 'o')).toHaveLength(3);
    expect(cutting.boards.filter((b) => b.owned === null)).toHaveLength(1);
    expect(cutting.boardsBound[0]).toMatchObject({ used: 1, lowerBound: 1, cost: 3, proved: true });
  });

  it('misses the defects of an owned board', () => {
    const owned = [ownedBoard('o', 2000, 1, [{ from: 700, to: 760 }])];
    const cutting = plan(
      [boardPiece('a', 690), boardPiece('b', 1200)],
      flat([{ length: 1200, price: 1 }]),
      {},
      owned,
    );
    expect(cutting.boards).toHaveLength(1);
    expect(cutting.boards[0]?.cuts.map((c) => [c.piece, c.from])).toEqual([
      ['a', 0],
      ['b', 760],
    ]);
  });

  it('gathers what is left over in one board', () => {
    // 2 x 400 + 600 on two boards of 1000: best rest 1000 - 400, not two middling ones.
    const pieces = [boardPiece('a', 600), boardPiece('b', 400), boardPiece('c', 400)];
    const cutting = plan(pieces, flat([{ length: 1003, price: 1 }]));
    expect(Math.max(...cutting.boards.map((b) => b.offcut))).toBe(600);
  });

  it('puts pieces in an order with few turns of the saw', () => {
    const pieces = [
      ...Array.from({ length: 3 }, (_, i) => boardPiece(`m${i}`, 300, [45, 45])),
      ...Array.from({ length: 3 }, (_, i) => boardPiece(`s${i}`, 300)),
    ];
    const cuts = plan(pieces, flat([{ length: 2400, price: 1 }])).boards[0]?.cuts ?? [];
    const kinds = cuts.map((c) => c.piece[0]).join('');
    expect(['mmmsss', 'sssmmm']).toContain(kinds);
  });

  it('names a piece that no board is long enough for', () => {
    const cutting = plan([boardPiece('a', 900), boardPiece('b', 1100)], flat([{ length: 1000, price: 1 }]));
    expect(cutting.checks).toEqual([
      {
        code: 'piece.too-long',
        severity: 'error',
        parts: ['part-b'],
        figures: { piece: 'b', length_mm: 1100, longest_mm: 1000 },
      },
    ]);
    expect(cutting.boards).toHaveLength(1);
  });

  it('names the pieces that owned boards run out for', () => {
    const cutting = plan(several(2, 1500), flat([{ length: 1000, price: 1 }]), {}, [ownedBoard('o', 1600)]);
    expect(cutting.checks.map((c) => c.code)).toEqual(['piece.too-long']);
    expect(cutting.boards).toHaveLength(1);
  });

  it('says so when the least is not proved, and plans all the same when cancelled', () => {
    const pieces = Array.from({ length: 30 }, (_, i) => boardPiece(`p${i}`, 301 + ((i * 97) % 411)));
    const input: CuttingInput = {
      pieces,
      stocks: stockMap(
        flat([
          { length: 1100, price: 3 },
          { length: 1900, price: 5 },
        ]),
      ),
      owned: [],
      shop: shop(),
      effort: { nodes: 100_000 },
      cancelled: () => true,
    };
    const cutting = planCutting(input);
    verifyBoards(input, cutting);
    expect(cutting.checks.map((c) => c.code)).toEqual(['cutting.not-proved']);
    expect(cutting.boardsBound[0]?.proved).toBe(false);
  });

  it('tells its progress, which never falls and ends at the whole', () => {
    const told: number[][] = [];
    planCutting({
      pieces: [boardPiece('a', 100), boardPiece('b', 100, [0, 0], { stock: 'other' })],
      stocks: stockMap(flat([{ length: 1000, price: 1 }]), {
        ...flat([{ length: 900, price: 1 }]),
        id: 'other',
      }),
      owned: [],
      shop: shop(),
      effort: { nodes: 100 },
      onProgress: (done, of) => told.push([done, of]),
    });
    expect(told).toContainEqual([100, 200]);
    expect(told.at(-1)).toEqual([200, 200]);
    expect(told.map((t) => t[0])).toEqual(told.map((t) => t[0] ?? 0).sort((a, b) => a - b));
  });

  it('is the same whatever the order of the pieces', () => {
    const pieces = [700, 300, 520, 410, 300, 900, 120].map((l, i) =>
      boardPiece(`p${i}`, l, [i % 2 ? 45 : 0, 30]),
    );
    const stock = flat([{ length: 1500, price: 1 }]);
    expect(plan([...pieces].reverse(), stock)).toEqual(plan(pieces, stock));
  });
});

const miter = fc.constantFrom(0, 45, -45, 30, -30, 22.5);
const anyPiece = fc.record({ length: fc.integer({ min: 110, max: 700 }), a: miter, b: miter });
const board = fc.record({
  length: fc.integer({ min: 710, max: 2500 }),
  price: fc.integer({ min: 1, max: 9 }),
});

describe('boards against every possibility', () => {
  it('mitered pieces, several priced lengths, owned boards: same cost and count', () => {
    fc.assert(
      fc.property(
        fc.array(anyPiece, { minLength: 1, maxLength: 5 }),
        fc.array(board, { minLength: 1, maxLength: 3 }),
        fc.option(fc.integer({ min: 200, max: 1200 }), { nil: null }),
        fc.boolean(),
        (list, boards, kept, turn) => {
          const pieces = list.map((p, i) => boardPiece(`p${i}`, p.length, [p.a, p.b]));
          const stock = turn ? flat(boards) : shaped(boards);
          const owned = kept === null ? [] : [ownedBoard('o', kept)];
          const cutting = plan(pieces, stock, { keepOffcut: 0 }, owned);
          const distinct = boards.filter(
            (b, i) =>
              !boards.some(
                (o, j) => o.length === b.length && (o.price < b.price || (o.price === b.price && j < i)),
              ),
          );
          const brute = bruteBoards(
            pieces,
            [...distinct, ...owned.map((o) => ({ length: o.length, price: 0, count: 1 }))],
            3,
            turn,
          );
          const [bound] = cutting.boardsBound;
          expect(bound?.cost).toBe(brute?.cost);
          expect(bound?.used).toBe(brute?.count);
          expect(bound?.proved).toBe(true);
          expect(bound?.lowerBound).toBeLessThanOrEqual(brute?.count ?? 0);
        },
      ),
      { numRuns: runs(50) },
    );
  });

  it('square pieces of one length: the longest rest too', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 100, max: 700 }), { minLength: 2, maxLength: 7 }), (lengths) => {
        const pieces = lengths.map((l, i) => boardPiece(`p${i}`, l));
        const cutting = plan(pieces, flat([{ length: 1000, price: 1 }]), { keepOffcut: 0, boardKerf: 0 });
        const brute = bruteBoards(pieces, [{ length: 1000, price: 1 }], 0, false);
        expect(cutting.boardsBound[0]?.used).toBe(brute?.count);
        expect(Math.max(...cutting.boards.map((b) => b.offcut))).toBeCloseTo(brute?.rest ?? -1, 6);
      }),
      { numRuns: runs(20) },
    );
  });

  it('defects, trim and many pieces: nothing lost, nothing overlaps', () => {
    fc.assert(
      fc.property(
        fc.array(anyPiece, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 0, max: 40 }),
        fc.array(fc.integer({ min: 0, max: 1500 }), { maxLength: 4 }),
        (list, endTrim, bad) => {
          const pieces = list.map((p, i) => boardPiece(`p${i}`, p.length, [p.a, p.b]));
          const defects = bad.map((a, i) => {
            const b = a + (i + 1) * 7;
            // The ends of a bad stretch come in either order.
            return i % 2 === 0 ? { from: a, to: b } : { from: b, to: a };
          });
          const input: CuttingInput = {
            pieces,
            stocks: stockMap(flat([{ length: 1800, price: 4 }])),
            owned: [ownedBoard('o', 1600, 2, defects)],
            shop: shop({ endTrim }),
            effort: { nodes: 5000 },
          };
          verifyBoards(input, planCutting(input));
        },
      ),
      { numRuns: runs(20) },
    );
  });
});
