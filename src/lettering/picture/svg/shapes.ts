import { pathOfRings } from '../../../geometry/path.ts';
import type { Path, Point } from '../../../geometry/shape.ts';
import { arcCubics } from './arc.ts';
import { attribute } from './markup.ts';
import { lengthIn, Numbers } from './numbers.ts';
import { pathOfData } from './pathData.ts';
import { badValue } from './problem.ts';

type Attributes = ReadonlyMap<string, string>;

function pointsOf(text: string): Point[] {
  const read = new Numbers(text);
  const points: Point[] = [];
  while (!read.done) points.push({ x: read.number(), y: read.number() });
  return points;
}

function rectangle(given: Attributes): Path {
  const [x, y] = [lengthIn(given.get('x'), 0), lengthIn(given.get('y'), 0)];
  const [w, h] = [lengthIn(given.get('width'), 0), lengthIn(given.get('height'), 0)];
  if (w < 0 || h < 0) return badValue('rect');
  const [ownX, ownY] = [lengthIn(given.get('rx'), -1), lengthIn(given.get('ry'), -1)];
  const rx = Math.min(w / 2, Math.max(0, ownX < 0 ? ownY : ownX));
  const ry = Math.min(h / 2, Math.max(0, ownY < 0 ? ownX : ownY));
  if (w === 0 || h === 0) return [];
  const at = (u: number, v: number): Point => ({ x: x + u, y: y + v });
  if (rx === 0 || ry === 0) return pathOfRings([[at(0, 0), at(w, 0), at(w, h), at(0, h)]]);
  const corners: readonly (readonly [Point, Point])[] = [
    [at(w - rx, 0), at(w, ry)],
    [at(w, h - ry), at(w - rx, h)],
    [at(rx, h), at(0, h - ry)],
    [at(0, ry), at(rx, 0)],
  ];
  return [
    { op: 'M', ...at(rx, 0) },
    ...corners.flatMap(
      ([from, to]): Path => [
        { op: 'L', ...from },
        ...arcCubics(from, to, { rx, ry, turn: 0, large: false, sweep: true }),
      ],
    ),
    { op: 'Z' },
  ];
}

function ellipse(cx: number, cy: number, rx: number, ry: number): Path {
  if (rx < 0 || ry < 0) return badValue('ellipse');
  if (rx === 0 || ry === 0) return [];
  const [right, left] = [
    { x: cx + rx, y: cy },
    { x: cx - rx, y: cy },
  ];
  const half = { rx, ry, turn: 0, large: false, sweep: true };
  return [
    { op: 'M', ...right },
    ...arcCubics(right, left, half),
    ...arcCubics(left, right, half),
    { op: 'Z' },
  ];
}

const polyline = (points: readonly Point[], closed: boolean): Path =>
  points.length < 2
    ? []
    : [
        ...points.map((p, i) => ({ op: i === 0 ? ('M' as const) : ('L' as const), ...p })),
        ...(closed ? [{ op: 'Z' as const }] : []),
      ];

/** Basic shapes of SVG 1.1 (chapter 9) and paths, in their own coordinates. */
export const SHAPES: ReadonlyMap<string, (given: Attributes) => Path> = new Map([
  ['path', (given: Attributes) => pathOfData(attribute({ attributes: given }, 'd'))],
  ['rect', rectangle],
  [
    'circle',
    (given) => {
      const r = lengthIn(given.get('r'), 0);
      return ellipse(lengthIn(given.get('cx'), 0), lengthIn(given.get('cy'), 0), r, r);
    },
  ],
  [
    'ellipse',
    (given) =>
      ellipse(
        lengthIn(given.get('cx'), 0),
        lengthIn(given.get('cy'), 0),
        lengthIn(given.get('rx'), 0),
        lengthIn(given.get('ry'), 0),
      ),
  ],
  [
    'line',
    (given) =>
      polyline(
        [
          { x: lengthIn(given.get('x1'), 0), y: lengthIn(given.get('y1'), 0) },
          { x: lengthIn(given.get('x2'), 0), y: lengthIn(given.get('y2'), 0) },
        ],
        false,
      ),
  ],
  ['polyline', (given) => polyline(pointsOf(attribute({ attributes: given }, 'points')), false)],
  ['polygon', (given) => polyline(pointsOf(attribute({ attributes: given }, 'points')), true)],
]);
