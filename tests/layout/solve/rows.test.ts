import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Linear } from '../../../src/layout/solve/linear.ts';
import { Rows } from '../../../src/layout/solve/rows.ts';

/** Exact fractions, so that the twin has no rounding to share with the solver. */
interface Fraction {
  readonly n: bigint;
  readonly d: bigint;
}
const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? (a < 0n ? -a : a) : gcd(b, a % b));
function fraction(n: bigint, d = 1n): Fraction {
  const g = gcd(n, d) * (d < 0n ? -1n : 1n);
  return g === 0n ? { n: 0n, d: 1n } : { n: n / g, d: d / g };
}
const times = (a: Fraction, b: Fraction) => fraction(a.n * b.n, a.d * b.d);
const minus = (a: Fraction, b: Fraction) => fraction(a.n * b.d - b.n * a.d, a.d * b.d);
const over = (a: Fraction, b: Fraction) => fraction(a.n * b.d, a.d * b.n);

/** Dense elimination over fractions: takes equations in order, leaves out what is decided or contradicts. */
function twin(equations: readonly (readonly number[])[], count: number) {
  const rows: { pivot: number; row: Fraction[] }[] = [];
  const found: string[] = [];
  for (const equation of equations) {
    let row = equation.map((v) => fraction(BigInt(v)));
    for (const known of rows) {
      const factor = row[known.pivot]!;
      row = row.map((v, i) => minus(v, times(factor, known.row[i]!)));
    }
    const pivot = row.slice(0, count).findIndex((v) => v.n !== 0n);
    if (pivot < 0) {
      found.push(row[count]!.n === 0n ? 'implied' : 'contradicts');
      continue;
    }
    found.push('new');
    const lead = row[pivot]!;
    const unit = row.map((v) => over(v, lead));
    for (const known of rows) {
      const factor = known.row[pivot]!;
      known.row = known.row.map((v, i) => minus(v, times(factor, unit[i]!)));
    }
    rows.push({ pivot, row: unit });
  }
  const values = new Map(rows.map(({ pivot, row }) => [pivot, row]));
  return { found, values };
}

const linear = (equation: readonly number[], count: number): Linear => ({
  terms: equation.slice(0, count).flatMap((c, i) => (c === 0 ? [] : [[i, c] as const])),
  constant: equation[count] ?? 0,
});

describe('elimination', () => {
  it('agrees with exact dense elimination on random small systems', () => {
    const system = fc.integer({ min: 1, max: 7 }).chain((count) =>
      fc.record({
        count: fc.constant(count),
        equations: fc.array(
          fc.array(fc.integer({ min: -2, max: 2 }), { minLength: count + 1, maxLength: count + 1 }),
          { maxLength: 12 },
        ),
      }),
    );
    fc.assert(
      fc.property(system, ({ count, equations }) => {
        // Wishes for every variable last, so that every system is decided.
        const all = [
          ...equations,
          ...Array.from({ length: count }, (_, i) =>
            Array.from({ length: count + 1 }, (_, j) => (j === i ? 1 : j === count ? -10 * (i + 1) : 0)),
          ),
        ];
        const rows = new Rows();
        const found = all.map((equation) => rows.add(linear(equation, count)).found);
        const exact = twin(all, count);
        expect(found).toEqual(exact.found);
        const values = rows.values(count);
        for (let i = 0; i < count; i++) {
          const end = exact.values.get(i)?.[count] ?? fraction(0n);
          expect(values[i]).toBeCloseTo(-Number(end.n) / Number(end.d), 7);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('names the equations that a contradiction comes from', () => {
    const rows = new Rows(true);
    rows.add({ terms: [[0, 1]], constant: -1 }, 10);
    rows.add({ terms: [[3, 1]], constant: -1 }, 11);
    rows.add(
      {
        terms: [
          [1, 1],
          [0, -1],
        ],
        constant: -1,
      },
      12,
    );
    rows.add(
      {
        terms: [
          [2, 1],
          [1, -1],
        ],
        constant: -1,
      },
      13,
    );
    expect(rows.add({ terms: [[2, 1]], constant: -3 }, 14)).toEqual({ found: 'implied' });
    expect(rows.add({ terms: [[2, 1]], constant: -4 }, 15)).toEqual({
      found: 'contradicts',
      tags: [10, 12, 13],
    });
  });

  it('a copy goes its own way', () => {
    const rows = new Rows();
    rows.add({
      terms: [
        [0, 1],
        [1, -1],
      ],
      constant: -5,
    });
    const twinRows = rows.copy();
    twinRows.add({ terms: [[1, 1]], constant: -1 });
    rows.add({ terms: [[1, 1]], constant: -2 });
    expect(rows.values(2)).toEqual([7, 2]);
    expect(twinRows.values(2)).toEqual([6, 1]);
  });

  it('chains of thousands, named from the far end, are solved', () => {
    const rows = new Rows();
    const count = 8000;
    for (let i = 0; i + 1 < count; i++)
      rows.add({
        terms: [
          [i, 1],
          [i + 1, -1],
        ],
        constant: 1,
      });
    rows.add({ terms: [[0, 1]], constant: -3 });
    expect(rows.values(count)[count - 1]).toBe(3 + count - 1);
  });
});
