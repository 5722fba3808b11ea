import type { Point } from '../../../geometry/shape.ts';
import { radians } from '../../../measure/units.ts';
import { Numbers } from './numbers.ts';
import { badValue } from './problem.ts';

/** x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function times([a, b, c, d, e, f]: Matrix, inner: Matrix): Matrix {
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

export const applied = ([a, b, c, d, e, f]: Matrix, { x, y }: Point): Point => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

const turned = (degrees: number): Matrix => {
  const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
  return [c, s, -s, c, 0, 0];
};

/** The list of a `transform` attribute as one matrix (SVG 1.1, chapter 7.6). */
export function matrixOf(text: string): Matrix {
  let all = IDENTITY;
  let rest = text.trim();
  while (rest !== '') {
    const [whole, name = '', listed = ''] = /^(\w+)\s*\(([^)]*)\)[\s,]*/.exec(rest) ?? [];
    if (whole === undefined) return badValue(text);
    all = times(all, stepOf(name, listed));
    rest = rest.slice(whole.length);
  }
  return all;
}

function stepOf(name: string, listed: string): Matrix {
  const read = new Numbers(listed);
  const n: number[] = [];
  while (!read.done && n.length < 7) n.push(read.number());
  const [a = 0, b, c, d = 0, e = 0, f = 0] = n;
  const is = (wanted: string, ...counts: number[]) => name === wanted && counts.includes(n.length);
  if (is('matrix', 6)) return [a, b ?? 0, c ?? 0, d, e, f];
  if (is('translate', 1, 2)) return [1, 0, 0, 1, a, b ?? 0];
  if (is('scale', 1, 2)) return [a, 0, 0, b ?? a, 0, 0];
  if (is('rotate', 1)) return turned(a);
  if (is('rotate', 3))
    return times(times([1, 0, 0, 1, b ?? 0, c ?? 0], turned(a)), [1, 0, 0, 1, -(b ?? 0), -(c ?? 0)]);
  if (is('skewX', 1)) return [1, 0, Math.tan(radians(a)), 1, 0, 0];
  if (is('skewY', 1)) return [1, Math.tan(radians(a)), 0, 1, 0, 0];
  return badValue(`${name}(${listed})`);
}
