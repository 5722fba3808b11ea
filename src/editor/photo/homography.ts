import type { Point, Quad } from '../../geometry/shape.ts';
import { at, pick } from '../../list/at.ts';

/** A projective map of the plane as the rows of its 3 x 3 matrix, the last entry being 1. */
export type Homography = readonly [number, number, number, number, number, number, number, number];

/** Pivots smaller than this share of the largest entry mean that three corners lie in line. */
const SINGULAR = 1e-14;

/**
 * The projective map that takes four points to four others; null when three of either lie in line. Solves the
 * eight equations x'(g x + h y + 1) = a x + b y + c and y'(g x + h y + 1) = d x + e y + f by elimination.
 */
export function homographyOf(from: Quad, to: Quad): Homography | null {
  if (hasThreeInLine(from) || hasThreeInLine(to)) return null;
  const rows = from.flatMap(({ x, y }, i) => {
    const { x: u, y: v } = to[i as 0 | 1 | 2 | 3];
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ];
  });
  const found = solve(rows);
  if (!found) return null;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = found;
  return [a, b, c, d, e, f, g, h];
}

/** Where a map takes a point; far away where the point maps to infinity. */
export function mapped([a, b, c, d, e, f, g, h]: Homography, { x, y }: Point): Point {
  const w = g * x + h * y + 1;
  return { x: (a * x + b * y + c) / w, y: (d * x + e * y + f) / w };
}

function hasThreeInLine(quad: Quad): boolean {
  const size = Math.max(...quad.flatMap((p) => quad.map((q) => Math.hypot(p.x - q.x, p.y - q.y))));
  return quad.some((_, skipped) => {
    const [p, q, r] = quad.filter((__, i) => i !== skipped);
    if (!p || !q || !r) return true;
    const twice = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    return Math.abs(twice) <= size * size * 1e-9;
  });
}

/** Solves rows of coefficients and a right side, with the largest pivot first; null when they do not decide. */
function solve(rows: readonly (readonly number[])[]): number[] | null {
  const n = rows.length;
  const m = rows.map((row) => [...row]);
  const entry = (i: number, j: number) => at(pick(m, i), j);
  const largest = Math.max(...m.flat().map(Math.abs));
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(entry(i, k)) > Math.abs(entry(best, k))) best = i;
    if (Math.abs(entry(best, k)) <= SINGULAR * largest) return null;
    const [top, other] = [m[k], m[best]];
    if (!top || !other) return null;
    [m[k], m[best]] = [other, top];
    for (let i = k + 1; i < n; i++) {
      const share = entry(i, k) / entry(k, k);
      m[i] = pick(m, i).map((value, j) => value - share * entry(k, j));
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let rest = entry(k, n);
    for (let j = k + 1; j < n; j++) rest -= entry(k, j) * at(found, j);
    found[k] = rest / entry(k, k);
  }
  return found;
}
