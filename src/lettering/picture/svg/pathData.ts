import { quadraticToCubic } from '../../../geometry/curve.ts';
import type { Path, PathCommand, Point } from '../../../geometry/shape.ts';
import { arcCubics } from './arc.ts';
import { Numbers } from './numbers.ts';
import { badValue } from './problem.ts';

/**
 * Path data of SVG 1.1 (chapter 8.3) as lines and cubics: relative commands made absolute, arcs and quadratics raised
 * to cubics, reflected handles worked out. Wrong data is refused, not drawn as far as it is right.
 */
export function pathOfData(data: string): Path {
  const read = new Numbers(data);
  const path: PathCommand[] = [];
  let at: Point = { x: 0, y: 0 };
  let start = at;
  /** The last handle of the command before, with the kind of curve that it is reflected for. */
  let handle: { readonly of: 'C' | 'Q'; readonly at: Point } | null = null;
  let command: string | null = null;
  const point = (relative: boolean): Point => {
    const [x, y] = [read.number(), read.number()];
    return relative ? { x: at.x + x, y: at.y + y } : { x, y };
  };
  const line = (to: Point) => {
    path.push({ op: 'L', ...to });
    at = to;
    handle = null;
  };
  const cubic = (h1: Point, h2: Point, to: Point) => {
    path.push({ op: 'C', x1: h1.x, y1: h1.y, x2: h2.x, y2: h2.y, ...to });
    at = to;
    handle = { of: 'C', at: h2 };
  };
  const quadratic = (h: Point, to: Point) => {
    path.push(quadraticToCubic(at, h, to));
    at = to;
    handle = { of: 'Q', at: h };
  };
  const reflected = (of: 'C' | 'Q'): Point =>
    handle?.of === of ? { x: 2 * at.x - handle.at.x, y: 2 * at.y - handle.at.y } : at;
  const arc = (relative: boolean) => {
    const [rx, ry, turn] = [read.number(), read.number(), read.number()];
    const [large, sweep] = [read.flag(), read.flag()];
    const to = point(relative);
    for (const curve of arcCubics(at, to, { rx, ry, turn, large, sweep })) path.push(curve);
    at = to;
    handle = null;
  };
  const draw = new Map<string, (relative: boolean) => void>([
    ['L', (relative) => line(point(relative))],
    ['H', (relative) => line({ x: read.number() + (relative ? at.x : 0), y: at.y })],
    ['V', (relative) => line({ x: at.x, y: read.number() + (relative ? at.y : 0) })],
    ['C', (relative) => cubic(point(relative), point(relative), point(relative))],
    ['S', (relative) => cubic(reflected('C'), point(relative), point(relative))],
    ['Q', (relative) => quadratic(point(relative), point(relative))],
    ['T', (relative) => quadratic(reflected('Q'), point(relative))],
    ['A', arc],
  ]);
  while (!read.done) {
    const next = read.letter(/[a-zA-Z]/);
    if (next === null && (command === null || !read.startsNumber)) return badValue(data);
    command = next ?? command ?? '';
    const relative: boolean = command === command.toLowerCase();
    const kind = command.toUpperCase();
    if (path.length === 0 && kind !== 'M') return badValue(data);
    if (kind === 'M') {
      at = point(relative);
      start = at;
      handle = null;
      path.push({ op: 'M', ...at });
      // Further places after a move are lines.
      command = relative ? 'l' : 'L';
    } else if (kind === 'Z') {
      path.push({ op: 'Z' });
      at = start;
      handle = null;
      command = null;
    } else {
      const one = draw.get(kind);
      if (!one) return badValue(data);
      // What is drawn on from a close begins where that contour did.
      if (path.at(-1)?.op === 'Z') path.push({ op: 'M', ...start });
      one(relative);
    }
  }
  return path;
}
