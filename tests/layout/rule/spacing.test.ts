import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countOf, panelsNear, spread } from '../../../src/layout/rule/spacing.ts';

/** check-values.md section 12, "Even division": gap = (W - n w)/(n + 1); panel = (W - (n + 1) s)/n. */
describe('published even divisions', () => {
  it('72 in, 13 members of 1 1/2: 14 gaps of 3.75 (ehow.com/how_6210555)', () => {
    const found = spread(72, 1.5, { mode: 'gaps', count: 13 });
    expect(found.gap).toBeCloseTo(3.75, 12);
    expect(found.starts).toHaveLength(13);
    expect(found.starts[0]).toBeCloseTo(3.75, 12);
    expect(72 - (found.starts[12] ?? 0) - 1.5).toBeCloseTo(3.75, 12);
  });

  it('52 in, 10 members of 1 1/2: 11 gaps of 3.3636 (ironfurnit.blogspot.com 2011-11)', () => {
    expect(spread(52, 1.5, { mode: 'gaps', count: 10 }).gap).toBeCloseTo(3.3636, 4);
  });

  it('wall of 96, stiles of 3, panels near 10: 7 panels, 8 stiles, panel 10.2857 (G. Katz, garymkatz.com)', () => {
    expect((96 - 3) / (10 + 3)).toBeCloseTo(7.15, 2);
    expect(panelsNear(96, 3, 10)).toBe(7);
    expect(spread(96, 3, { mode: 'flush', count: 8 }).gap).toBeCloseTo(10.2857, 4);
  });

  it('75 in, 15 members of 2: the printed 3 is wrong, exact is 2.8125 (ehow.co.uk/how_5806309)', () => {
    const { gap } = spread(75, 2, { mode: 'gaps', count: 15 });
    expect(gap).toBeCloseTo(2.8125, 12);
    expect(Math.abs(gap - 3)).toBeGreaterThan(0.18);
    // With gaps of 3 the members would need more than the span.
    expect(15 * 2 + 16 * 3).toBeGreaterThan(75);
  });
});

describe('spacing modes', () => {
  it('half gaps at the ends', () => {
    const { gap, starts } = spread(100, 10, { mode: 'half', count: 5 });
    expect(gap).toBe(10);
    expect(starts).toEqual([5, 25, 45, 65, 85]);
  });

  it('a pitch, centered as a group', () => {
    const { gap, starts } = spread(100, 10, { mode: 'centers', count: 3, pitch: 30 });
    expect(gap).toBe(20);
    expect(starts).toEqual([15, 45, 75]);
  });

  it('one member with flush ends stands in the middle', () => {
    expect(spread(100, 10, { mode: 'flush', count: 1 }).starts).toEqual([45]);
  });

  it('a largest gap finds the least count that keeps to it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 3000, noNaN: true }),
        fc.double({ min: 5, max: 100, noNaN: true }),
        fc.double({ min: 10, max: 200, noNaN: true }),
        (span, size, most) => {
          const spacing = { mode: 'most', count: 1, most } as const;
          const count = countOf(span, size, spacing);
          expect(spread(span, size, spacing).gap).toBeLessThanOrEqual(most + 1e-6);
          if (count > 1) {
            const fewer = (span - (count - 1) * size) / count;
            expect(fewer).toBeGreaterThan(most - 1e-6);
          }
        },
      ),
    );
  });

  it('every mode leaves the gaps it says, symmetrically', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('gaps', 'flush', 'half', 'centers'),
        fc.integer({ min: 2, max: 40 }),
        fc.double({ min: 500, max: 3000, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (mode, count, span, size) => {
          const pitch = size * 1.5;
          const { gap, starts } = spread(
            span,
            size,
            mode === 'centers' ? { mode, count, pitch } : { mode, count },
          );
          for (let i = 1; i < count; i++) {
            expect((starts[i] ?? 0) - (starts[i - 1] ?? 0) - size).toBeCloseTo(gap, 6);
          }
          expect((starts[0] ?? 0) + (starts[count - 1] ?? 0) + size).toBeCloseTo(span, 6);
        },
      ),
    );
  });
});
