import { at } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';

const SAME = 1e-9;

/**
 * Discretization points (J. C. Herz, IBM J. Res. Dev. 16, 1972): every sum of the sizes up to the limit.
 * Only there need a cut be tried. `most` limits how often each size may be taken. Null when there are more
 * than `cap`.
 */
export function sumsUpTo(
  sizes: readonly { readonly size: Mm; readonly most: number }[],
  limit: Mm,
  cap: number,
): Mm[] | null {
  let sums: Mm[] = [0];
  for (const { size, most } of sizes) {
    const next: Mm[] = [];
    for (const s of sums) {
      for (let n = 0; n <= most && s + n * size <= limit + SAME; n++) next.push(s + n * size);
    }
    sums = distinct(next);
    if (sums.length > cap) return null;
  }
  return sums;
}

function distinct(values: Mm[]): Mm[] {
  const sorted = values.sort((a, b) => a - b);
  const kept: Mm[] = [];
  for (const v of sorted) if (kept.length === 0 || v - at(kept, kept.length - 1) > SAME) kept.push(v);
  return kept;
}

/** Index of the largest point that is not over x; -1 when there is none. */
export function pointUnder(points: readonly Mm[], x: Mm): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (at(points, mid) <= x + SAME) low = mid + 1;
    else high = mid;
  }
  return low - 1;
}
