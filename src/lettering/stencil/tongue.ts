import { distance, lerp } from '../../geometry/point.ts';
import { boxesMeet } from '../../geometry/region.ts';
import { boxOfPoints, containsPoint, reverseRing } from '../../geometry/ring.ts';
import { distanceToSegment } from '../../geometry/segment.ts';
import type { Point, Ring } from '../../geometry/shape.ts';
import { cyclic } from '../../list/at.ts';
import { type Mm, radians } from '../../measure/units.ts';
import { type Crossing, crossingFrom, SQUARED, startsOn } from './crossing.ts';
import { courseOf, type Side, type Solid } from './solid.ts';
import type { Tongue } from './weak.ts';

/** Stands for the tongue among the pieces of sheet; islands count from 0 and the frame is -1. */
const TONGUE = -2;
/** The bridge holds the tongue in the half that is away from its root. */
const FREE_HALF = 0.5;
/** A bar longer than this many widths is no better than the finger it should hold. */
const MOST_LENGTH = 10;
/** Borders this near to the tongue are its own, as a share of its width. */
const NEAR = 0.25;

/** The bridge that holds a tongue's free end: across the thinnest stroke beside it, near the tip. */
export function tongueBridge({ ring, root, width: own }: Tongue, solid: Solid, width: Mm): Crossing | null {
  const near = NEAR * own;
  const far = Math.max(...ring.map((point) => distance(point, root)));
  const box = boxOfPoints(ring);
  const by = 8 * width + Math.max(box.w, box.h);
  const room = { x: box.x - by, y: box.y - by, w: box.w + 2 * by, h: box.h + 2 * by };
  const letters = solid.letters.filter(({ sides }) =>
    sides.some(({ from }) => boxesMeet(room, { ...from, w: 0, h: 0 })),
  );
  const sides = letters.flatMap((letter) => letter.sides.map((side) => ownSide(side, ring, near)));
  const course = courseOf(sides);
  const around = { sides, corners: letters.flatMap((letter) => letter.corners) };
  let best: Crossing | null = null;
  let least = Infinity;
  for (const start of startsOn(reverseRing(ring), width)) {
    const share = distance(start.point, root) / far;
    if (share < FREE_HALF) continue;
    const crossing = crossingFrom(start, TONGUE, around, course, width, SQUARED);
    if (!crossing || crossing.length > MOST_LENGTH * width) continue;
    const cost = (crossing.length * (1 + Math.sin(radians(crossing.slant)) + crossing.corner)) / share;
    if (cost < least) {
      least = cost;
      best = crossing;
    }
  }
  return best;
}

function ownSide(side: Side, ring: Ring, near: Mm): Side {
  const own = [0.1, 0.5, 0.9].some((t) => isNear(lerp(side.from, side.to, t), ring, near));
  return own ? { ...side, beyond: TONGUE } : side;
}

function isNear(point: Point, ring: Ring, near: Mm): boolean {
  if (containsPoint(ring, point)) return true;
  return ring.some((from, i) => distanceToSegment(point, from, cyclic(ring, i + 1)) < near);
}
