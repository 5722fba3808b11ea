import { subtract, turnBetween } from '../../geometry/point.ts';
import { boxesMeet } from '../../geometry/region.ts';
import { boxOfPoints, containsPoint, signedArea } from '../../geometry/ring.ts';
import type { Box, Point, Polygon, Region, Ring } from '../../geometry/shape.ts';
import { cyclic, real } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { insidePoint } from './inside.ts';
import { type Mirror, mirrorsOf } from './mirror.ts';

/** The sheet around all letters; islands are numbered from 0. */
export const FRAME = -1;

/** A piece of sheet that letters enclose. */
export interface Island {
  /** Counted from the left. */
  readonly index: number;
  /** Its border as a hole of the letter around it: clockwise, the letter on the left. */
  readonly ring: Ring;
  readonly box: Box;
  /** A place inside its border. */
  readonly inside: Point;
  /** Whose sides can be crossed to reach other sheet. */
  readonly letter: number;
  readonly kind: 'island' | 'tongue';
  /** About which its border is its own image. */
  readonly mirrors: readonly Mirror[];
}

/** One side of a letter's border and which piece of sheet lies beyond it. */
export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly beyond: number;
}

/** A letter, or letters that touch, as an obstacle course between pieces of sheet. */
export interface Letter {
  readonly sides: readonly Side[];
  /** Where the letter ends in a sharp corner: a bar beside one leaves a sliver of it. */
  readonly corners: readonly Point[];
}

export interface Solid {
  readonly letters: readonly Letter[];
  readonly islands: readonly Island[];
}

/** Flattened curves turn less than this from chord to chord, apart from the tightest. */
const CORNER = 30;

/**
 * The letters as polygons with the piece of sheet on the other side of every border. The holes of the
 * polygons are the islands; what lies outside of a polygon is the frame, or the island it stands in.
 * `kindOf` tells islands that letters enclose from weak ones that hang on a thin neck.
 */
export function solidOf(letters: Region, kindOf: (hole: Ring) => Island['kind']): Solid {
  const found = letters.flatMap((polygon, letter) =>
    polygon.holes.map((ring) => ({ ring, letter, box: boxOfPoints(ring), inside: insidePoint(ring) })),
  );
  found.sort((a, b) => a.box.x - b.box.x || a.box.y - b.box.y);
  const islands = found.map(
    (hole, index): Island => ({
      ...hole,
      index,
      kind: kindOf(hole.ring),
      mirrors: mirrorsOf(hole.ring, hole.box),
    }),
  );
  return { letters: letters.map((polygon, i) => letterOf(polygon, i, islands)), islands };
}

function letterOf(polygon: Polygon, index: number, islands: readonly Island[]): Letter {
  const own = islands.filter((island) => island.letter === index);
  const sides = [
    ...sidesOf(polygon.outer, standsIn(polygon, index, islands)),
    ...own.flatMap((island) => sidesOf(island.ring, island.index)),
  ];
  return { sides, corners: [polygon.outer, ...polygon.holes].flatMap(cornersOf) };
}

/** The island around a letter: the smallest one whose border encloses it. */
function standsIn(polygon: Polygon, index: number, islands: readonly Island[]): number {
  const box = boxOfPoints(polygon.outer);
  const place = polygon.outer[0];
  let best: Island | undefined;
  for (const island of islands) {
    if (!place || island.letter === index || !boxesMeet(island.box, box)) continue;
    if (!containsPoint(island.ring, place)) continue;
    if (!best || Math.abs(signedArea(island.ring)) < Math.abs(signedArea(best.ring))) best = island;
  }
  return best ? best.index : FRAME;
}

export const sidesOf = (ring: Ring, beyond: number): Side[] =>
  ring.map((from, i) => ({ from, to: cyclic(ring, i + 1), beyond }));

function cornersOf(ring: Ring): Point[] {
  return ring.filter((point, i) => {
    const before = cyclic(ring, i - 1);
    const after = cyclic(ring, i + 1);
    return turnBetween(subtract(point, before), subtract(after, point)) > CORNER;
  });
}

/** Sides laid out for looking along many rays: their ends in one row of numbers. */
export interface Course {
  readonly sides: readonly Side[];
  readonly ends: Float64Array;
}

export function courseOf(sides: readonly Side[]): Course {
  const ends = new Float64Array(4 * sides.length);
  sides.forEach(({ from, to }, i) => {
    ends[4 * i] = from.x;
    ends[4 * i + 1] = from.y;
    ends[4 * i + 2] = to.x;
    ends[4 * i + 3] = to.y;
  });
  return { sides, ends };
}

/**
 * The sides that a straight band reaches, in their order: a ray within it meets the same one first among them.
 *
 * @param along unit vector of the band, through `middle`
 * @param half how far it reaches to either side
 */
export function courseWithin({ sides, ends }: Course, middle: Point, along: Point, half: Mm): Course {
  const { x: dx, y: dy } = along;
  const off = dx * middle.y - dy * middle.x;
  return courseOf(
    sides.filter((_, i) => {
      const a = dx * real(ends, 4 * i + 1) - dy * real(ends, 4 * i) - off;
      const b = dx * real(ends, 4 * i + 3) - dy * real(ends, 4 * i + 2) - off;
      return !(a > half && b > half) && !(a < -half && b < -half);
    }),
  );
}

/** The first side that a ray from `from` along the unit vector `along` meets, and how far off. */
interface Hit {
  readonly distance: Mm;
  readonly side: Side;
}

/** Nearer than this a ray meets the side it starts on. */
const LEAST: Mm = 1e-4;

export function firstHit({ sides, ends }: Course, from: Point, along: Point): Hit | null {
  const { x, y } = from;
  const { x: dx, y: dy } = along;
  let distance = Infinity;
  let hit = -1;
  for (let i = 0; i < ends.length; i += 4) {
    const ax = real(ends, i) - x;
    const ay = real(ends, i + 1) - y;
    const bx = real(ends, i + 2) - x;
    const by = real(ends, i + 3) - y;
    // Offsets of both ends from the ray's line: a side is met where they have different signs. A corner
    // that lies exactly on the line counts to one of its two sides only.
    const a = dx * ay - dy * ax;
    const b = dx * by - dy * bx;
    if (a < 0 === b < 0) continue;
    const share = a / (a - b);
    const ahead = (ax + (bx - ax) * share) * dx + (ay + (by - ay) * share) * dy;
    if (ahead > LEAST && ahead < distance) {
      distance = ahead;
      hit = i / 4;
    }
  }
  const side = sides[hit];
  return side ? { distance, side } : null;
}
