import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pagesAlong } from '../../src/patterns/cells.ts';
import { cutsBetween } from '../../src/patterns/whole.ts';

const ROOM = 100;
const OVERLAP = 10;
const spans = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 30 })), {
    minLength: 1,
    maxLength: 8,
  })
  .map((sizes) => {
    let at = 0;
    return sizes.map(([size, gap]) => {
      const span = { low: at, high: at + size };
      at += size + gap;
      return span;
    });
  });

/** Windows of the pages that these cuts make. */
const windows = (cuts: readonly number[]) =>
  cuts
    .slice(1)
    .map((to, i) => to - cuts[i]! + (i > 0 ? OVERLAP / 2 : 0) + (i < cuts.length - 2 ? OVERLAP / 2 : 0));

describe('trim lines between letters', () => {
  it('make pages that fit the paper and split nothing that a plain search over whole millimeters would not', () => {
    fc.assert(
      fc.property(spans, (keep) => {
        const end = keep[keep.length - 1]!.high;
        const cuts = cutsBetween(0, end, keep, ROOM, OVERLAP);
        expect(cuts[0]).toBe(0);
        expect(cuts[cuts.length - 1]).toBe(end);
        for (const window of windows(cuts)) expect(window).toBeLessThanOrEqual(ROOM + 1e-6);
        const split = (at: number) => keep.filter((s) => at > s.low + 1e-6 && at < s.high - 1e-6).length;
        const total = cuts.slice(1, -1).reduce((sum, at) => sum + split(at), 0);
        expect([total, cuts.length - 1]).toEqual(leastSplits(end, split));
      }),
      { numRuns: 200 },
    );
  });

  it('are those of the formula where there is nothing to keep', () => {
    for (const length of [50, 100, 101, 190, 191, 1000]) {
      expect(cutsBetween(0, length, [], ROOM, OVERLAP).length - 1).toBe(pagesAlong(length, ROOM, OVERLAP));
    }
  });
});

/** Brute twin: fewest splits, then fewest pages, over all places in steps of half a millimeter. */
function leastSplits(end: number, split: (at: number) => number): [number, number] {
  const n = Math.round(end * 2);
  const best: [number, number][] = [[0, 0]];
  for (let i = 1; i <= n; i++) {
    let least: [number, number] = [Number.POSITIVE_INFINITY, 0];
    for (let k = 0; k < i; k++) {
      const shared = ((k > 0 ? 1 : 0) + (i < n ? 1 : 0)) * (OVERLAP / 2);
      if ((i - k) / 2 + shared > ROOM + 1e-6) continue;
      const way = best[k]!;
      const cost: [number, number] = [way[0] + (i < n ? split(i / 2) : 0), way[1] + 1];
      if (cost[0] < least[0] || (cost[0] === least[0] && cost[1] < least[1])) least = cost;
    }
    best.push(least);
  }
  return best[n]!;
}
