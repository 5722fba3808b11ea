import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lyings } from '../../src/cutting/boards/ends.ts';
import { growRows } from '../../src/cutting/boards/grow.ts';
import { type Fit, jointsOf } from '../../src/cutting/boards/joints.ts';
import { leastGapsOf } from '../../src/cutting/boards/leastGaps.ts';
import type { Problem } from '../../src/cutting/boards/problem.ts';
import { type Budget, budgetOf } from '../../src/cutting/budget.ts';
import { type CuttingInput, planCutting } from '../../src/cutting/cutting.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { chanceOf } from '../chance.ts';
import { bruteLength } from './bruteBoards.ts';
import { boardPiece, flat, shaped, shop, stockMap } from './make.ts';
import { verifyBoards } from './verifyBoards.ts';

const KERF = 3;
const RUNS = Number(process.env.ROW_RUNS ?? 150);

/** Up to five pieces with any ends; some of them alike. */
const some = fc
  .array(
    fc.record({
      length: fc.integer({ min: 120, max: 400 }),
      miters: fc.tuple(fc.integer({ min: -45, max: 45 }), fc.integer({ min: -45, max: 45 })),
      copies: fc.integer({ min: 1, max: 2 }),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((kinds) =>
    kinds
      .flatMap(({ length, miters, copies }, k) =>
        Array.from({ length: copies }, (_, c) => boardPiece(`p${k}-${c}`, length, miters)),
      )
      .slice(0, 5),
  );

/** Each piece an item and a shape of its own. */
function problemOf(pieces: readonly Piece[], turn: boolean): Problem {
  const stock = turn ? flat([{ length: 2400, price: 4 }]) : shaped([{ length: 2400, price: 4 }]);
  const joints = jointsOf(pieces.map((piece) => lyings(piece, KERF, stock)));
  return {
    items: pieces.map((piece, shape) => ({
      length: piece.overall,
      shape,
      size: Math.max(1, piece.overall + (joints.half[shape] ?? 0)),
      count: 1,
    })),
    bins: [{ capacity: 2400, room: 2400 + joints.spare, weight: 1, limit: Infinity }],
    joints,
    shapes: pieces.length,
    roundUp: (w) => w,
  };
}

const lengthOf = (pieces: readonly Piece[]) => pieces.reduce((sum, p) => sum + p.overall, 0);
const NEAR = 1e-6;

describe('rows of pieces with unlike ends, against every order tried one by one', () => {
  for (const turn of [true, false]) {
    const held = turn ? 'flat stock' : 'molding, which is never turned';
    it(`${held}: no row takes less than the bound, and fits are told as they are`, () => {
      fc.assert(
        fc.property(some, fc.double({ min: -20, max: 20, noNaN: true }), (pieces, over) => {
          const { joints } = problemOf(pieces, turn);
          const least = bruteLength(pieces, KERF, turn) - lengthOf(pieces);
          const counts = pieces.map(() => 1);
          expect(leastGapsOf(joints.net)(counts)).toBeLessThanOrEqual(least + NEAR);
          expect(joints.row(counts).gaps).toBeCloseTo(least, 6);
          if (Math.abs(over) < NEAR) return;
          const fit: Fit = joints.fit(counts, least + over, budgetOf(1000));
          expect(fit).toBe(over > 0 ? 'yes' : 'no');
        }),
        { numRuns: RUNS },
      );
    });

    it(`${held}: a grown row is a row that there is, and all pieces where they fit loosely`, () => {
      fc.assert(
        fc.property(some, fc.integer({ min: 100, max: 2400 }), (pieces, capacity) => {
          const p = problemOf(pieces, turn);
          const worth = p.items.map((i) => i.length);
          const all = pieces.map(() => 1);
          const [short, long] = growRows(p, [capacity, 5000], all, worth, -1, budgetOf(10_000));
          expect(long?.counts).toEqual(all);
          for (const [row, room] of [
            [short, capacity],
            [long, 5000],
          ] as const) {
            if (!row) continue;
            const on = pieces.filter((_, i) => (row.counts[i] ?? 0) > 0);
            expect(row.rest).toBeGreaterThanOrEqual(-NEAR);
            expect(bruteLength(on, KERF, turn)).toBeLessThanOrEqual(room - row.rest + NEAR);
          }
        }),
        { numRuns: RUNS },
      );
    });
  }
});

/** Counts the nodes that are asked of it. */
function counted(budget: Budget): { readonly budget: Budget; readonly spent: () => number } {
  let spent = 0;
  return {
    budget: {
      ...budget,
      spend: () => {
        spent += 1;
        return budget.spend();
      },
    },
    spent: () => spent,
  };
}

describe('the work of a search', () => {
  it('is charged where it is done: long rows in order cost more than short ones', () => {
    const chance = chanceOf(6);
    const angle = () => 90 * chance() - 45;
    const pieces = Array.from({ length: 60 }, (_, i) => boardPiece(`p${i}`, 100, [angle(), angle()]));
    const cost = (n: number) => {
      const { joints } = problemOf(pieces, true);
      const { budget, spent } = counted(budgetOf(Infinity));
      const counts = pieces.map((_, i) => (i < n ? 1 : 0));
      const least = leastGapsOf(joints.net)(counts);
      joints.fit(counts, least + NEAR, budget);
      return spent();
    };
    // A row of n is ordered by weighing about n pairs of ways for each of its n places.
    expect(cost(60)).toBeGreaterThan(2.5 * cost(30));
  });

  it('ends soon after its steps: few steps still give a sound plan of 125 strips with unlike ends', () => {
    const chance = chanceOf(3);
    const angle = () => Math.round(80 * chance() - 40);
    const pieces = Array.from({ length: 125 }, (_, i) =>
      boardPiece(`p${i}`, 60 + 70 * chance(), [angle(), angle()], { width: 35 }),
    );
    const lengths = [
      { length: 1219.2, price: 4 },
      { length: 1828.8, price: 5.5 },
      { length: 2438.4, price: 7 },
    ];
    const input: CuttingInput = {
      pieces,
      stocks: stockMap(flat(lengths, 35)),
      owned: [],
      shop: shop({ boardKerf: KERF }),
      effort: { nodes: 8000 },
    };
    const cutting = planCutting(input);
    verifyBoards(input, cutting);
    const [bound] = cutting.boardsBound;
    expect(bound?.cost).toBeLessThanOrEqual(1.05 * (bound?.lowerCost ?? 0));
  });
});
