import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';
import type { Point } from './shape.ts';

/** Points double as vectors: a vector is the point it reaches from the origin. */
export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const subtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const scale = (p: Point, factor: number): Point => ({ x: p.x * factor, y: p.y * factor });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** Positive when `b` is counterclockwise of `a`; twice the area of the triangle between them. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
export const length = (v: Point): Mm => Math.hypot(v.x, v.y);
export const distance = (a: Point, b: Point): Mm => Math.hypot(b.x - a.x, b.y - a.y);
export const midpoint = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** The point at share `t` from `a` to `b`: exactly `b` at 1, and exactly on the line when it is level or upright. */
export const lerp = (a: Point, b: Point, t: number): Point =>
  t === 1 ? b : { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };

/** Vector of length 1 in the same direction; the zero vector stays zero. */
export function unit(v: Point): Point {
  const size = length(v);
  return size === 0 ? { x: 0, y: 0 } : { x: v.x / size, y: v.y / size };
}

/** Unit vector a quarter turn counterclockwise of `v`: what lies on the left when walking along `v`. */
export function leftNormal(v: Point): Point {
  const u = unit(v);
  return { x: -u.y, y: u.x };
}

/** Direction of a vector, counterclockwise from x, over -180 up to 180. */
export const angleOf = (v: Point): Deg => degrees(Math.atan2(v.y, v.x));

/** By how much the way turns from one vector to the next, to the left where it is more than 0; over -180 up to 180. */
export const turnBetween = (a: Point, b: Point): Deg => degrees(Math.atan2(cross(a, b), dot(a, b)));

/** Quarter turns are exact, so that turned parts stay square to the face. */
function cosSin(angle: Deg): [number, number] {
  const turns = angle / 90;
  if (Number.isInteger(turns)) {
    const quarter = ((turns % 4) + 4) % 4;
    if (quarter === 0) return [1, 0];
    if (quarter === 1) return [0, 1];
    if (quarter === 2) return [-1, 0];
    return [0, -1];
  }
  const a = radians(angle);
  return [Math.cos(a), Math.sin(a)];
}

/** `p` turned counterclockwise about `about` (the origin when left out). */
export function rotate(p: Point, angle: Deg, about: Point = { x: 0, y: 0 }): Point {
  const [c, s] = cosSin(angle);
  const x = p.x - about.x;
  const y = p.y - about.y;
  return { x: about.x + x * c - y * s, y: about.y + x * s + y * c };
}
