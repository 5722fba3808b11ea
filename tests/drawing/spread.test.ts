import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadOut } from '../../src/drawing/spread.ts';

describe('labels beside their marks', () => {
  const marks = fc
    .array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 40 })
    .map((m) => m.sort((a, b) => a - b));

  it('keep their order and distance, inside their room, and stay at their marks where there is room', () => {
    fc.assert(
      fc.property(marks, (at) => {
        const rows = spreadOut(at, 3.3, 2, 998);
        rows.forEach((row, i) => {
          if (i > 0) expect(row - rows[i - 1]!).toBeGreaterThanOrEqual(3.3 - 1e-6);
          expect(row).toBeGreaterThanOrEqual(2 - 1e-9);
          expect(row).toBeLessThanOrEqual(998 + 1e-9);
          const alone = (at[i - 1] ?? -100) < at[i]! - 140 && (at[i + 1] ?? 2000) > at[i]! + 140;
          if (alone) expect(row).toBeCloseTo(Math.min(998, Math.max(2, at[i]!)), 9);
        });
      }),
    );
  });

  it('move as little as can be: two at one place part evenly', () => {
    expect(spreadOut([100, 100], 4, 0, 200)).toEqual([98, 102]);
  });

  it('stand closer when there are too many', () => {
    expect(spreadOut([5, 5, 5], 4, 0, 4)).toEqual([0, 2, 4]);
  });
});
