import type { Path, Point } from '../geometry/shape.ts';
import { radians } from '../measure/units.ts';
import type { GroupItem } from './drawing.ts';

/** Affine map: x' = a x + c y + e, y' = b x + d y + f. */
export interface Matrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** The map that does `inner` first and `outer` after it. */
export function compose(outer: Matrix, inner: Matrix): Matrix {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

/** Quarter turns come out exact: the cosine of 90 degrees is 0, not 6e-17. */
function turnOf(angle: number): { cos: number; sin: number } {
  const quarter = (((angle % 360) + 360) % 360) / 90;
  if (quarter === 0) return { cos: 1, sin: 0 };
  if (quarter === 1) return { cos: 0, sin: 1 };
  if (quarter === 2) return { cos: -1, sin: 0 };
  if (quarter === 3) return { cos: 0, sin: -1 };
  return { cos: Math.cos(radians(angle)), sin: Math.sin(radians(angle)) };
}

/** Turn by `angle` degrees counterclockwise about the origin, then move. */
export function turnAndMove(angle: number, move: Point): Matrix {
  const { cos, sin } = turnOf(angle);
  return { a: cos, b: sin, c: -sin, d: cos, e: move.x, f: move.y };
}

/** What a group does to its children: scale, turn, move. */
export function matrixOf(group: GroupItem): Matrix {
  const turn = turnAndMove(group.turn ?? 0, group.move ?? { x: 0, y: 0 });
  const { x, y } = group.scale ?? { x: 1, y: 1 };
  return { a: turn.a * x, b: turn.b * x, c: turn.c * y, d: turn.d * y, e: turn.e, f: turn.f };
}

export function isIdentity(m: Matrix): boolean {
  return m.a === 1 && m.b === 0 && m.c === 0 && m.d === 1 && m.e === 0 && m.f === 0;
}

export function applied(m: Matrix, p: Point): Point {
  return { x: m.a * p.x + m.c * p.y + m.e, y: m.b * p.x + m.d * p.y + m.f };
}

export function appliedToPath(m: Matrix, path: Path): Path {
  if (isIdentity(m)) return path;
  return path.map((command) => {
    if (command.op === 'Z') return command;
    const to = applied(m, command);
    if (command.op !== 'C') return { op: command.op, ...to };
    const one = applied(m, { x: command.x1, y: command.y1 });
    const two = applied(m, { x: command.x2, y: command.y2 });
    return { op: 'C', x1: one.x, y1: one.y, x2: two.x, y2: two.y, ...to };
  });
}

/**
 * The map that takes a picture's own square, one wide and high and counted from its upper left corner down, to where three
 * of its corners lie (lower left, lower right, upper left).
 */
export const matrixOfImage = ([low, right, up]: readonly [Point, Point, Point]): Matrix => ({
  ...{ a: right.x - low.x, b: right.y - low.y },
  ...{ c: low.x - up.x, d: low.y - up.y },
  ...{ e: up.x, f: up.y },
});

/** How much lengths grow under the map, on average over the directions. */
export function growth(m: Matrix): number {
  return Math.sqrt(Math.abs(m.a * m.d - m.b * m.c));
}
