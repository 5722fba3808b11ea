import type { PathCommand, Point } from '../../../geometry/shape.ts';
import { wholeUp } from '../../../measure/round.ts';
import { radians } from '../../../measure/units.ts';

interface Arc {
  readonly rx: number;
  readonly ry: number;
  /** Degrees from the x axis to the arc's own. */
  readonly turn: number;
  readonly large: boolean;
  readonly sweep: boolean;
}

/**
 * An elliptical arc as cubics, each over an eighth of the ellipse at most, where a cubic strays by less than 4e-6 of the
 * radius. Center from ends and the growing of radii that do not reach: SVG 1.1, implementation notes F.6.5 and F.6.6.
 */
export function arcCubics(from: Point, to: Point, { rx, ry, turn, large, sweep }: Arc): PathCommand[] {
  let [a, b] = [Math.abs(rx), Math.abs(ry)];
  if (from.x === to.x && from.y === to.y) return [];
  if (a === 0 || b === 0) return [{ op: 'L', ...to }];
  const [c, s] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  const x = c * half.x + s * half.y;
  const y = c * half.y - s * half.x;
  const reach = Math.sqrt((x / a) ** 2 + (y / b) ** 2);
  if (reach > 1) [a, b] = [a * reach, b * reach];
  const over = (x / a) ** 2 + (y / b) ** 2;
  const k = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, 1 / over - 1));
  const center = { x: (k * a * y) / b, y: (-k * b * x) / a };
  const angleOf = (u: number, v: number) => Math.atan2((v - center.y) / b, (u - center.x) / a);
  const first = angleOf(x, y);
  const full = 2 * Math.PI;
  const way = (((angleOf(-x, -y) - first) % full) + full) % full;
  const span = sweep ? way : way - full;
  const pieces = Math.max(1, wholeUp(Math.abs(span) / (Math.PI / 4)));
  const step = span / pieces;
  const h = (4 / 3) * Math.tan(step / 4);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  /** A place of the circle of radius 1 on the ellipse. */
  const on = (u: number, v: number): Point => {
    const [p, q] = [center.x + a * u, center.y + b * v];
    return { x: middle.x + c * p - s * q, y: middle.y + s * p + c * q };
  };
  return Array.from({ length: pieces }, (_, i): PathCommand => {
    const [t0, t1] = [first + i * step, first + (i + 1) * step];
    const h1 = on(Math.cos(t0) - h * Math.sin(t0), Math.sin(t0) + h * Math.cos(t0));
    const h2 = on(Math.cos(t1) + h * Math.sin(t1), Math.sin(t1) - h * Math.cos(t1));
    const end = i === pieces - 1 ? to : on(Math.cos(t1), Math.sin(t1));
    return { op: 'C', x1: h1.x, y1: h1.y, x2: h2.x, y2: h2.y, ...end };
  });
}
