import type { Mm } from '../measure/units.ts';
import { ringOfBox, ringsOf } from './region.ts';
import { boxOfPoints } from './ring.ts';
import type { Box, Path, PathCommand, Point, Region, Ring } from './shape.ts';

/** Handle of a quarter circle of radius 1 as a cubic, 4/3 tan(22.5 degrees); off by less than 0.03% of it. */
const QUARTER_HANDLE = (4 / 3) * Math.tan(Math.PI / 8);

/** An open line through the points. */
export function pathOfPolyline(points: readonly Point[]): Path {
  return points.map(({ x, y }, i) => ({ op: i === 0 ? 'M' : 'L', x, y }));
}

/** Closed contours, one a ring. */
export function pathOfRings(rings: readonly Ring[]): Path {
  return rings.flatMap((ring): PathCommand[] =>
    ring.length === 0 ? [] : [...pathOfPolyline(ring), { op: 'Z' }],
  );
}

/** All borders of a region; outers and holes run opposite ways, so both fill rules draw it right. */
export const pathOfRegion = (region: Region): Path => pathOfRings(ringsOf(region));

export const pathOfBox = (box: Box): Path => pathOfRings([ringOfBox(box)]);

/** A circle of four cubics, counterclockwise from its right. */
export function circlePath(center: Point, radius: Mm): Path {
  const k = QUARTER_HANDLE;
  const at = (x: number, y: number): Point => ({ x: center.x + x * radius, y: center.y + y * radius });
  const quarter = (h1: Point, h2: Point, to: Point): PathCommand => ({
    op: 'C',
    x1: h1.x,
    y1: h1.y,
    x2: h2.x,
    y2: h2.y,
    x: to.x,
    y: to.y,
  });
  return [
    { op: 'M', ...at(1, 0) },
    quarter(at(1, k), at(k, 1), at(0, 1)),
    quarter(at(-k, 1), at(-1, k), at(-1, 0)),
    quarter(at(-1, -k), at(-k, -1), at(0, -1)),
    quarter(at(k, -1), at(1, -k), at(1, 0)),
    { op: 'Z' },
  ];
}

/** Every point and handle moved by `fn`; exact for any affine map. */
export function transformPath(path: Path, fn: (p: Point) => Point): Path {
  return path.map((command): PathCommand => {
    if (command.op === 'Z') return command;
    const to = fn(command);
    if (command.op !== 'C') return { op: command.op, x: to.x, y: to.y };
    const h1 = fn({ x: command.x1, y: command.y1 });
    const h2 = fn({ x: command.x2, y: command.y2 });
    return { op: 'C', x1: h1.x, y1: h1.y, x2: h2.x, y2: h2.y, x: to.x, y: to.y };
  });
}

/** Smallest box around the drawn path: curves by where they turn back, not by their handles. */
export function boxOfPath(path: Path): Box {
  const points: Point[] = [];
  let from: Point = { x: 0, y: 0 };
  for (const command of path) {
    if (command.op === 'Z') continue;
    const to = { x: command.x, y: command.y };
    points.push(to);
    if (command.op === 'C') {
      const { x1, y1, x2, y2 } = command;
      const start = from;
      const turns = [...turnsOf(start.x, x1, x2, to.x), ...turnsOf(start.y, y1, y2, to.y)];
      for (const t of turns) {
        points.push({ x: cubicAt(start.x, x1, x2, to.x, t), y: cubicAt(start.y, y1, y2, to.y, t) });
      }
    }
    from = to;
  }
  return boxOfPoints(points);
}

/** One coordinate of a cubic at share `t`. */
function cubicAt(a: number, b: number, c: number, d: number, t: number): number {
  const s = 1 - t;
  return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
}

/** Shares strictly inside the curve where one coordinate turns back: zeros of its derivative. */
function turnsOf(a: number, b: number, c: number, d: number): number[] {
  const q2 = d - 3 * c + 3 * b - a;
  const q1 = 2 * (c - 2 * b + a);
  const q0 = b - a;
  const inside = (t: number) => t > 0 && t < 1;
  if (q2 === 0) return q1 === 0 ? [] : [-q0 / q1].filter(inside);
  const under = q1 * q1 - 4 * q2 * q0;
  if (under < 0) return [];
  // The larger root first, the other by their product: no digits lost when q2 is small.
  const big = -(q1 + Math.sign(q1 || 1) * Math.sqrt(under)) / 2;
  return [big / q2, big === 0 ? 0 : q0 / big].filter(inside);
}
