import type { Mm } from '../measure/units.ts';
import { cubicPoint, turnsOfCubic } from './curve.ts';
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
      const start = from;
      const [h1, h2] = [
        { x: command.x1, y: command.y1 },
        { x: command.x2, y: command.y2 },
      ];
      points.push(...turnsOfCubic(start, h1, h2, to).map((t) => cubicPoint(start, h1, h2, to, t)));
    }
    from = to;
  }
  return boxOfPoints(points);
}
