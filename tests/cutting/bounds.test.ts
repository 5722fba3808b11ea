import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bentBound,
  countBound,
  lengthBound,
  reducedBound,
  stair,
  thresholdBound,
} from '../../src/cutting/boards/bound.ts';
import { defectsOn, stretches } from '../../src/cutting/boards/stretch.ts';
import { budgetOf } from '../../src/cutting/budget.ts';
import { leastCover } from '../../src/cutting/cover.ts';
import { shuffler } from '../../src/cutting/random.ts';
import { sheetBound, sheetCountBound } from '../../src/cutting/sheets/bound.ts';
import type { SheetBin, SheetItem } from '../../src/cutting/sheets/problem.ts';
import { weigh } from '../../src/cutting/weigh.ts';
import { pick } from '../../src/list/at.ts';
import { runs } from '../runs.ts';

/** Fewest bins by trying everything. */
function fewest(sizes: readonly number[], room: number): number {
  let best = sizes.length;
  const bins: number[] = [];
  const go = (i: number): void => {
    const size = sizes[i];
    if (bins.length >= best) return;
    if (size === undefined) {
      best = bins.length;
      return;
    }
    for (let b = 0; b < bins.length; b++) {
      if ((bins[b] ?? 0) + size > room) continue;
      bins[b] = (bins[b] ?? 0) + size;
      go(i + 1);
      bins[b] = (bins[b] ?? 0) - size;
    }
    bins.push(size);
    go(i + 1);
    bins.pop();
  };
  go(0);
  return best;
}

describe('lower bounds on boards', () => {
  it('see what the plain length does not', () => {
    // Three pieces over half a board: 1.8 boards of length, but no two share one.
    expect(lengthBound([6, 6, 6], 10)).toBe(2);
    expect(thresholdBound([6, 6, 6], 10)).toBe(3);
    // Seven pieces over a third: two to a board, which only a bent size shows (7 x 3.4 = 23.8 in boards of 10).
    expect(thresholdBound([3.4, 3.4, 3.4, 3.4, 3.4, 3.4, 3.4], 10)).toBe(3);
    expect(bentBound([3.4, 3.4, 3.4, 3.4, 3.4, 3.4, 3.4], 10)).toBe(4);
  });

  it('are never over the least, and each is at least as good as the plainer one', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 9 }), (sizes) => {
        const least = fewest(
          [...sizes].sort((a, b) => b - a),
          20,
        );
        const [l1, l2, l3] = [lengthBound(sizes, 20), thresholdBound(sizes, 20), reducedBound(sizes, 20)];
        expect(l1).toBeLessThanOrEqual(l2);
        expect(l2).toBeLessThanOrEqual(l3);
        expect(l3).toBeLessThanOrEqual(least);
        expect(countBound(sizes, 20)).toBeLessThanOrEqual(least);
      }),
      { numRuns: 400 },
    );
  });

  it('bend sizes so that no board is over full', () => {
    const shares = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(shares, fc.integer({ min: 1, max: 12 }), (parts, k) => {
        const whole = Math.max(
          60,
          parts.reduce((a, b) => a + b, 0),
        );
        const sum = parts.reduce((total, p) => total + stair(p / whole, k), 0);
        expect(sum).toBeLessThanOrEqual(1 + 1e-9);
      }),
      { numRuns: 500 },
    );
  });
});

describe('lower bounds on money', () => {
  it('take whole boards only', () => {
    const kinds = [
      { amount: 2440, weight: 40 },
      { amount: 1220, weight: 25 },
    ];
    expect(leastCover(kinds, 1220)).toBe(25);
    expect(leastCover(kinds, 1221)).toBe(40);
    expect(leastCover(kinds, 3000)).toBe(65);
    expect(leastCover(kinds, 0)).toBe(0);
  });

  it('round up to what whole boards can cost, count included', () => {
    const { weight, roundUp, step } = weigh([
      { amount: 2440, price: 4.5 },
      { amount: 3660, price: 7 },
    ]);
    expect(step).toBe(0.5);
    const [short = 0, long = 0] = weight;
    expect(roundUp(short * 0.3)).toBe(short);
    expect(roundUp(short + 1)).toBe(long);
    expect(roundUp(long + 1)).toBe(2 * short);
  });
});

describe('lower bounds on sheets', () => {
  it('see that pieces over half a side share no sheet', () => {
    const turnless = (w: number, h: number, count: number) => ({
      ways: [{ w, h, turned: false }],
      count,
      area: w * h,
    });
    const problem = (count: number) => ({
      items: [turnless(6, 6, count)],
      bins: [],
      roundUp: (x: number) => x,
    });
    expect(sheetCountBound(problem(5), 10, 10)).toBe(5);
  });

  /** A whole sheet and its halves and quarters, the smaller ones dearer for their area. */
  const SHEETS: readonly SheetBin[] = [
    { w: 100, h: 60, weight: 40, limit: Infinity },
    { w: 50, h: 60, weight: 24, limit: Infinity },
    { w: 50, h: 30, weight: 14, limit: Infinity },
  ];
  const piece = (w: number, h: number, turns: boolean): SheetItem => {
    const straight = { w, h, turned: false };
    const ways = turns ? [straight, { w: h, h: w, turned: true }] : [straight];
    return { ways, count: 1, area: w * h };
  };
  const problemOf = (items: readonly SheetItem[]) => ({ items, bins: SHEETS, roundUp: (x: number) => x });
  const byArea = (items: readonly SheetItem[]): number =>
    leastCover(
      SHEETS.map((b) => ({ amount: b.w * b.h, weight: b.weight })),
      items.reduce((sum, item) => sum + item.area, 0),
    );

  it('see of several sizes which of them a piece does not go on beside another', () => {
    const items = [1, 2, 3].map(() => piece(55, 35, false));
    expect(byArea(items)).toBeLessThan(80);
    // Two side by side or one over the other reach past a whole sheet, and the half is too narrow for one.
    expect(sheetBound(problemOf(items))).toBe(120);
  });

  it('never ask for more than the sheets from which pieces were cut, of whatever sizes, in whatever way', () => {
    const random = shuffler(31);
    let above = 0;
    const tries = runs(40);
    for (let t = 0; t < tries; t++) {
      const items: SheetItem[] = [];
      const cut = (w: number, h: number, deep: number): void => {
        const across = random() < w / (w + h);
        const side = across ? w : h;
        if (deep === 0 || random() < 0.2) {
          // What is trimmed off a piece afterwards is waste, and asks for nothing.
          items.push(piece(w * (1 - 0.25 * random()), h * (1 - 0.25 * random()), random() < 0.3));
          return;
        }
        const at = side * (0.2 + 0.6 * random());
        cut(across ? at : w, across ? h : at, deep - 1);
        cut(across ? side - at : w, across ? h : side - at, deep - 1);
      };
      let weight = 0;
      for (let s = 1 + Math.floor(random() * 4); s > 0; s--) {
        const sheet = pick(SHEETS, Math.floor(random() * SHEETS.length));
        weight += sheet.weight;
        cut(sheet.w, sheet.h, 2);
      }
      const bound = sheetBound(problemOf(items));
      expect(bound).toBeLessThanOrEqual(weight + 1e-9);
      expect(bound).toBeGreaterThanOrEqual(byArea(items));
      if (bound > byArea(items)) above++;
    }
    expect(above).toBeGreaterThan(0);
  });
});

describe('stretches', () => {
  it('lie between trimmed ends and defects, which may overlap and leave the board', () => {
    const bad = [
      { from: 300, to: 320 },
      { from: 310, to: 350 },
      { from: 0, to: 12 },
      { from: 990, to: 1200 },
    ];
    expect(stretches(1000, 5, bad, 3)).toEqual([
      { from: 12, to: 300 },
      { from: 350, to: 990 },
    ]);
  });

  it('keep clear of a defect whose far end was entered first, and of one that leaves the board', () => {
    expect(defectsOn(1000, [{ from: 560, to: 500 }])).toEqual([{ from: 500, to: 560 }]);
    expect(defectsOn(1000, [{ from: 1200, to: 950 }])).toEqual([{ from: 950, to: 1000 }]);
    expect(defectsOn(1000, [{ from: 1200, to: 1100 }])).toEqual([]);
    expect(stretches(1000, 0, [{ from: 560, to: 500 }], 3)).toEqual([
      { from: 0, to: 500 },
      { from: 560, to: 1000 },
    ]);
  });

  it('keep a kerf apart at a thin defect', () => {
    expect(stretches(1000, 0, [{ from: 500, to: 501 }], 3)).toEqual([
      { from: 0, to: 500 },
      { from: 503, to: 1000 },
    ]);
  });
});

describe('budget', () => {
  it('ends after its nodes, its parts with it, and at once when cancelled', () => {
    const budget = budgetOf(10);
    const part = budget.part(0.5);
    expect(Array.from({ length: 7 }, () => part.spend()).filter(Boolean)).toHaveLength(5);
    expect(budget.left).toBe(5);
    expect(part.done()).toBe(true);
    expect(budgetOf(10, () => true).spend()).toBe(false);
  });
});
