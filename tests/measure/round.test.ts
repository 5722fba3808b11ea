import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heavyOrLight, roundLength, shareOut, stepOf } from '../../src/measure/round.ts';
import type { FractionStyle } from '../../src/measure/style.ts';

const inch = (fraction: FractionStyle) => ({ unit: 'in', fraction }) as const;
const metric = { unit: 'mm', fraction: '16' } as const;
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe('roundLength', () => {
  it('goes to the nearest step and mirrors', () => {
    expect(roundLength(25.4 * 3.3636, inch('16'))).toBeCloseTo(25.4 * 3.375, 12);
    expect(roundLength(25.4 / 32, inch('16'))).toBe(25.4 / 16);
    expect(roundLength(-25.4 / 32, inch('16'))).toBe(-25.4 / 16);
    expect(roundLength(12.34, metric)).toBeCloseTo(12.3, 12);
    expect(Object.is(roundLength(-0.001, metric), 0)).toBe(true);
  });

  it('is never off by more than half a step, and keeps what it gave', () => {
    const fraction = fc.constantFrom<FractionStyle>('8', '16', '32', '64', 'decimal');
    fc.assert(
      fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), fraction, (mm, f) => {
        const style = inch(f);
        const rounded = roundLength(mm, style);
        expect(Math.abs(rounded - mm)).toBeLessThanOrEqual(stepOf(style) / 2 + 1e-6);
        expect(roundLength(rounded, style)).toBe(rounded);
        expect(roundLength(-mm, style) + 0).toBe(-rounded + 0);
      }),
    );
  });

  it('rounds marks from the datum: eleven gaps of 3.3636 in end within half a step, not at 11 times one', () => {
    // W 52, w 1.5, n 10: 11 gaps of 3.3636 in (check values, section 12).
    const gap = (37 / 11) * 25.4;
    const marks = Array.from({ length: 12 }, (_, i) => roundLength(i * gap, inch('16')));
    expect(marks[11]).toBeCloseTo(37 * 25.4, 9);
    expect(11 * roundLength(gap, inch('16'))).toBeCloseTo(37.125 * 25.4, 9);
  });
});

describe('stepOf', () => {
  it('is the smallest step that the style shows', () => {
    expect(stepOf(inch('16'))).toBeCloseTo(1.5875, 12);
    expect(stepOf(inch('decimal'))).toBeCloseTo(0.0254, 12);
    expect(stepOf(metric)).toBeCloseTo(0.1, 12);
  });
});

describe('heavyOrLight', () => {
  it('is for inches only', () => {
    expect(heavyOrLight(12.34, metric)).toBeNull();
    expect(heavyOrLight(25.4 * (1 + 0.02), inch('16'))).toBe('heavy');
    expect(heavyOrLight(25.4 * (1 - 0.02), inch('16'))).toBe('light');
    expect(heavyOrLight(25.4 * (1 + 0.02), inch('decimal'))).toBeNull();
  });
});

describe('shareOut', () => {
  it('gives what is left over to the share that rounding down took most from', () => {
    // 7 steps by 1 : 3 are 1.75 and 5.25.
    expect(shareOut(7, [1, 3], 1)).toEqual([2, 5]);
    expect(shareOut(7, [3, 1], 1)).toEqual([5, 2]);
    expect(shareOut(7, [0, 0], 1)).toEqual([0, 0]);
    expect(shareOut(7, [], 1)).toEqual([]);
  });

  it('fills the whole with steps', () => {
    // 37 in over 11 gaps in sixteenths: 592 = 11 x 53 + 9.
    const sixteenth = 25.4 / 16;
    const gaps = shareOut(37 * 25.4, 11, sixteenth).map((g) => Math.round(g / sixteenth));
    expect(sum(gaps)).toBe(592);
    expect(gaps).toEqual([54, 54, 53, 54, 54, 54, 54, 54, 53, 54, 54]);
  });

  it('keeps shares that are whole already, and gives the rest to those cut most', () => {
    expect(shareOut(10, [2, 3.4, 4.6], 1)).toEqual([2, 3, 5]);
    expect(shareOut(7, [1, 1], 1)).toEqual([4, 3]);
    expect(shareOut(8, 3, 1)).toEqual([3, 2, 3]);
    expect(shareOut(7, 3, 1)).toEqual([2, 3, 2]);
  });

  it('has nothing to share among nobody', () => {
    expect(shareOut(10, 0, 1)).toEqual([]);
    expect(shareOut(10, [0, 0], 1)).toEqual([0, 0]);
    expect(shareOut(0, 3, 1)).toEqual([0, 0, 0]);
  });

  it('adds up, is off by less than a step, and reads the same from both ends', () => {
    const weights = fc.array(fc.double({ min: 0.5, max: 900, noNaN: true }), { minLength: 1, maxLength: 24 });
    fc.assert(
      fc.property(weights, fc.integer({ min: 1, max: 5000 }), fc.boolean(), (half, steps, odd) => {
        const list = odd ? [...half, 7, ...[...half].reverse()] : [...half, ...[...half].reverse()];
        const shares = shareOut(steps, list, 1);
        const whole = sum(list);
        expect(sum(shares)).toBe(steps);
        shares.forEach((share, i) => {
          expect(Math.abs(share - (steps * (list[i] ?? 0)) / whole)).toBeLessThan(1);
        });
        const uneven = shares.filter((share, i) => share !== shares[shares.length - 1 - i]);
        // One odd step among an even number of equals: the pair nearest the middle differs, by that step.
        expect(uneven.length).toBeLessThanOrEqual(2);
      }),
    );
  });

  it('spreads equal shares evenly: no stretch holds more than one step beyond its part', () => {
    const run = fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 5000 }));
    fc.assert(
      fc.property(run, ([count, steps]) => {
        const shares = shareOut(steps, count, 1);
        let reached = 0;
        shares.forEach((share, i) => {
          reached += share;
          expect(Math.abs(reached - ((i + 1) * steps) / count)).toBeLessThanOrEqual(1);
        });
      }),
    );
  });
});
