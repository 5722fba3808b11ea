import type { Color, DrawItem } from '../../drawing/drawing.ts';
import { shape } from '../../drawing/items.ts';
import { dimmed } from '../../finish/lit/lambert.ts';
import { pathOfRings } from '../../geometry/path.ts';
import type { Mm } from '../../measure/units.ts';
import { type Eye, type Place, seenFrom } from './eye.ts';

/** Something with six flat sides: its corners around one end and, in the same order, around the other. */
export interface Block {
  readonly near: readonly [Place, Place, Place, Place];
  readonly far: readonly [Place, Place, Place, Place];
  readonly color: Color;
}

/** Light of a side by where it looks: most from above, least from below. Our own choice, by eye. */
const FROM_ABOVE = 1;
const FROM_FRONT = 0.82;
const FROM_BELOW = 0.5;
const LINE: Mm = 2;

type Vector = Place;
const minus = (a: Place, b: Place): Vector => ({ x: a.x - b.x, y: a.y - b.y, out: a.out - b.out });
const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y + a.out * b.out;
const cross = (a: Vector, b: Vector): Vector => ({
  x: a.y * b.out - a.out * b.y,
  y: a.out * b.x - a.x * b.out,
  out: a.x * b.y - a.y * b.x,
});

/** The middle of some places. */
const middleOf = (places: readonly Place[]): Place => ({
  x: places.reduce((sum, p) => sum + p.x, 0) / places.length,
  y: places.reduce((sum, p) => sum + p.y, 0) / places.length,
  out: places.reduce((sum, p) => sum + p.out, 0) / places.length,
});

/** The sides of a block that look toward the eye; of a convex body no two of them cover each other. */
export function drawnBlock({ near, far, color }: Block, eye: Eye): DrawItem[] {
  const see = seenFrom(eye);
  const middle = middleOf([...near, ...far]);
  const [a, b, c, d] = near;
  const [e, f, g, h] = far;
  const sides = [near, far, [a, b, f, e], [b, c, g, f], [c, d, h, g], [d, a, e, h]] as const;
  return sides.flatMap((side): DrawItem[] => {
    const across = cross(minus(side[1], side[0]), minus(side[2], side[0]));
    const own = middleOf(side);
    const turn = dot(across, minus(own, middle)) < 0 ? -1 : 1;
    if (turn * dot(across, minus(eye, own)) <= 0) return [];
    const up = (turn * across.y) / (Math.sqrt(dot(across, across)) || 1);
    const light =
      up > 0 ? FROM_FRONT + up * (FROM_ABOVE - FROM_FRONT) : FROM_FRONT + up * (FROM_FRONT - FROM_BELOW);
    return [
      shape(pathOfRings([side.map(see)]), {
        fill: dimmed(color, light),
        stroke: dimmed(color, 0.3),
        width: LINE,
      }),
    ];
  });
}

/** A block along the walls of the room. */
export function uprightBlock(low: Place, high: Place, color: Color): Block {
  const ring = (out: Mm): Block['near'] => [
    { x: low.x, y: low.y, out },
    { x: high.x, y: low.y, out },
    { x: high.x, y: high.y, out },
    { x: low.x, y: high.y, out },
  ];
  return { near: ring(high.out), far: ring(low.out), color };
}
