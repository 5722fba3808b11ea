import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CuttingInput, planCutting } from '../../src/cutting/cutting.ts';
import { bestGuillotine } from '../../src/cutting/sheets/best.ts';
import type { Owned, Shop } from '../../src/design/schema.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { runs } from '../runs.ts';
import { bruteFits, bruteSheets } from './bruteSheets.ts';
import { sheet, sheetPiece, shop, stockMap } from './make.ts';
import { verifySheets } from './verifySheets.ts';

const plan = (
  pieces: readonly Piece[],
  stock: ReturnType<typeof sheet>,
  change: Partial<Shop> = {},
  owned: readonly Owned[] = [],
  nodes = 100_000,
) => {
  const input: CuttingInput = {
    pieces,
    stocks: stockMap(stock),
    owned,
    shop: shop(change),
    effort: { nodes },
  };
  const cutting = planCutting(input);
  verifySheets(input, cutting);
  return cutting;
};

const ownedSheet = (id: string, length: number, width: number, count = 1): Owned => ({
  id,
  stock: 'sheet',
  length,
  width,
  count,
  defects: [],
});

const SIXTEENTH = 25.4 / 16;
const told = (piece: Piece, length: number, width: number): Piece => ({
  ...piece,
  shown: { ...piece.shown, length, width },
});

describe('sheets', () => {
  it('sets the fence to what the cut list tells of the piece that it frees', () => {
    // Ten panels share 41 1/2 in: six are told 4 1/8, four 4 3/16.
    const widths = Array.from({ length: 10 }, (_, i) => (i < 6 ? 66 : 67) * SIXTEENTH);
    const ten = widths.map((w, i) => told(sheetPiece(`p${i}`, (41.5 / 10) * 25.4, 500), w, 500));
    const { sheets } = plan(ten, sheet([{ length: 1220, width: 610, price: 9 }]));
    const near = (w: number, of: number) => Math.abs(w - of * SIXTEENTH) < 1e-9;
    const cut = sheets.flatMap((s) => s.placements.map((p) => (p.turned ? p.h : p.w)));
    expect(cut.filter((w) => near(w, 66))).toHaveLength(6);
    expect(cut.filter((w) => near(w, 67))).toHaveLength(4);
    const fences = sheets.flatMap((s) => s.sequence.map((c) => c.fence)).filter((f) => f > 100 && f < 110);
    expect(fences.length).toBeGreaterThanOrEqual(9);
    expect(fences.filter((f) => !near(f, 66) && !near(f, 67))).toEqual([]);
  });

  it('takes a kerf between pieces and none at the edges', () => {
    const four = Array.from({ length: 4 }, (_, i) => sheetPiece(`p${i}`, 499, 299));
    expect(plan(four, sheet([{ length: 1001, width: 601, price: 9 }])).sheets).toHaveLength(1);
    expect(plan(four, sheet([{ length: 1000.9, width: 601, price: 9 }])).sheets).toHaveLength(2);
  });

  it('trims the edges of a bought sheet, rips first, and not those of an owned one', () => {
    const stock = sheet([{ length: 1000, width: 500, price: 9 }]);
    const [cut] = plan([sheetPiece('a', 980, 480)], stock, { edgeTrim: 10 }).sheets;
    expect(cut?.sequence.map((c) => [c.kind, c.fence])).toEqual([
      ['rip', 7],
      ['rip', 480],
      ['cross', 7],
      ['cross', 980],
    ]);
    const owned = plan([sheetPiece('a', 980, 480)], stock, { edgeTrim: 10 }, [ownedSheet('o', 980, 480)]);
    expect(owned.sheets[0]).toMatchObject({ owned: 'o', cost: 0, sequence: [] });
  });

  it('follows the grain where piece and sheet have one', () => {
    const sizes = [{ length: 1000, width: 400, price: 9 }];
    const along = sheetPiece('a', 300, 700, 'along');
    expect(plan([along], sheet(sizes, true)).checks.map((c) => c.code)).toEqual(['piece.too-big']);
    expect(plan([along], sheet(sizes, false)).sheets[0]?.placements[0]?.turned).toBe(true);
    const across = sheetPiece('a', 300, 700, 'across');
    expect(plan([across], sheet(sizes, true)).sheets[0]?.placements[0]?.turned).toBe(true);
  });

  it('names a piece that no sheet is big enough for', () => {
    const cutting = plan([sheetPiece('a', 1300, 1300)], sheet([{ length: 2440, width: 1220, price: 9 }]));
    expect(cutting.checks).toEqual([
      {
        code: 'piece.too-big',
        severity: 'error',
        parts: ['part-a'],
        figures: { piece: 'a', width_mm: 1300, height_mm: 1300 },
      },
    ]);
    expect(cutting.sheets).toEqual([]);
  });

  it('names the pieces that owned sheets run out for', () => {
    const two = [sheetPiece('a', 900, 900), sheetPiece('b', 900, 900), sheetPiece('c', 300, 300)];
    const cutting = plan(two, sheet([{ length: 800, width: 800, price: 9 }]), {}, [
      ownedSheet('o', 950, 950),
    ]);
    expect(cutting.checks.map((c) => c.code)).toEqual(['piece.too-big']);
    expect(cutting.sheets.flatMap((s) => s.placements.map((p) => p.piece)).sort()).toEqual(['a', 'c']);
  });

  it('chooses sizes by price and keeps one big rest', () => {
    const stock = sheet([
      { length: 2440, width: 1220, price: 40 },
      { length: 1220, width: 1220, price: 25 },
    ]);
    const one = plan([sheetPiece('a', 1000, 600), sheetPiece('b', 600, 500)], stock);
    expect(one.sheets.map((s) => s.length)).toEqual([1220]);
    expect(one.sheetsBound[0]).toMatchObject({ cost: 25, lowerCost: 25, proved: true });
    const rest = plan([sheetPiece('a', 1220, 300)], sheet([{ length: 2440, width: 1220, price: 40 }]));
    // Turned across the end it leaves 2137 x 1220, along the edge only 2440 x 917.
    expect(rest.sheets[0]?.offcuts[0]).toMatchObject({ w: 2137, h: 1220 });
  });

  it('still plans when cancelled, and says that the least is not proved', () => {
    const pieces = Array.from({ length: 30 }, (_, i) =>
      sheetPiece(`p${i}`, 200 + 31 * (i % 7), 150 + 47 * (i % 5)),
    );
    const input: CuttingInput = {
      pieces,
      stocks: stockMap(sheet([{ length: 1000, width: 800, price: 9 }])),
      owned: [],
      shop: shop(),
      effort: { nodes: 100_000 },
      cancelled: () => true,
    };
    const cutting = planCutting(input);
    verifySheets(input, cutting);
    expect(cutting.sheetsBound[0]?.lowerBound).toBeLessThanOrEqual(cutting.sheetsBound[0]?.used ?? 0);
    expect(cutting.checks.every((c) => c.code === 'cutting.not-proved')).toBe(true);
  });

  it('is the same whatever the order of the pieces', () => {
    const pieces = Array.from({ length: 15 }, (_, i) =>
      sheetPiece(`p${i}`, 200 + 31 * (i % 7), 150 + 47 * (i % 5)),
    );
    const stock = sheet([{ length: 1000, width: 800, price: 9 }]);
    expect(plan([...pieces].reverse(), stock)).toEqual(plan(pieces, stock));
  });
});

const small = fc.record({
  w: fc.integer({ min: 2, max: 9 }),
  h: fc.integer({ min: 2, max: 9 }),
  grain: fc.constantFrom<Piece['grain'][]>('any', 'along'),
});
const size = fc.record({
  length: fc.integer({ min: 9, max: 14 }),
  width: fc.integer({ min: 9, max: 11 }),
  price: fc.integer({ min: 1, max: 5 }),
});

describe('sheets against every possibility', () => {
  it('small pieces with kerf, grain, two sizes and an owned sheet: same cost and count', () => {
    fc.assert(
      fc.property(
        fc.array(small, { minLength: 1, maxLength: 4 }),
        fc.array(size, { minLength: 1, maxLength: 2 }),
        fc.boolean(),
        fc.integer({ min: 0, max: 1 }),
        (list, sizes, kept, kerf) => {
          const pieces = list.map((p, i) => sheetPiece(`p${i}`, p.w, p.h, p.grain));
          const owned = kept ? [ownedSheet('o', 8, 6)] : [];
          const cutting = plan(pieces, sheet(sizes, true), { sheetKerf: kerf, keepOffcut: 1 }, owned);
          const brute = bruteSheets(
            list.map((p) => ({ w: p.w, h: p.h, turn: p.grain === 'any' })),
            [
              ...sizes.map((s) => ({ w: s.length, h: s.width, price: s.price })),
              ...owned.map((o) => ({ w: o.length, h: o.width ?? 0, price: 0, count: 1 })),
            ],
            kerf,
          );
          const [bound] = cutting.sheetsBound;
          expect({ cost: bound?.cost, count: bound?.used }).toEqual(brute);
          expect(bound?.proved).toBe(true);
        },
      ),
      { numRuns: runs(60) },
    );
  });

  it('one sheet, limited copies: same value', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            w: fc.integer({ min: 1, max: 6 }),
            h: fc.integer({ min: 1, max: 6 }),
            value: fc.integer({ min: 1, max: 20 }),
          }),
          {
            minLength: 1,
            maxLength: 5,
          },
        ),
        fc.integer({ min: 4, max: 9 }),
        fc.integer({ min: 4, max: 9 }),
        fc.boolean(),
        (list, w, h, turn) => {
          const can = bruteFits(
            list.map((t) => ({ ...t, turn })),
            0,
          );
          let most = 0;
          for (let set = 0; set < 1 << list.length; set++) {
            if (can(set, w, h))
              most = Math.max(
                most,
                list.reduce((sum, t, i) => sum + (set & (1 << i) ? t.value : 0), 0),
              );
          }
          const found = bestGuillotine(
            { w, h },
            list.map((t) => ({ ...t, max: 1 })),
            { turn },
          );
          expect(found.value).toBe(most);
          expect(found.proved).toBe(true);
          const worth = found.layout.reduce((sum, p) => sum + (list[p.type]?.value ?? 0), 0);
          expect(worth).toBe(most);
        },
      ),
      { numRuns: runs(75) },
    );
  });

  it('many pieces: nothing lost, nothing overlaps, every cut edge to edge', () => {
    // `off`: sixteenths by which a piece is told larger or smaller than it is, to fill a span with others.
    const off = fc.integer({ min: -1, max: 1 });
    const piece = fc.record({
      w: fc.integer({ min: 40, max: 900 }),
      h: fc.integer({ min: 40, max: 500 }),
      off: fc.tuple(off, off),
    });
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 25 }),
        fc.integer({ min: 0, max: 15 }),
        fc.integer({ min: 0, max: 5 }),
        (list, edgeTrim, sheetKerf) => {
          const pieces = list.map((p, i) =>
            told(sheetPiece(`p${i}`, p.w, p.h), p.w + p.off[0] * SIXTEENTH, p.h + p.off[1] * SIXTEENTH),
          );
          const sizes = [
            { length: 1220, width: 610, price: 12 },
            { length: 2440, width: 1220, price: 40 },
          ];
          plan(pieces, sheet(sizes), { edgeTrim, sheetKerf }, [ownedSheet('o', 700, 500, 2)], 4000);
        },
      ),
      { numRuns: runs(12) },
    );
  });
});
