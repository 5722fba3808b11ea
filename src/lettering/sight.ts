import { connectedParts, subtract } from '../geometry/clip.ts';
import { boxOf, ringsOf } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import { distanceToSegment } from '../geometry/segment.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { FLATNESS, SAME_LENGTH } from '../geometry/tolerance.ts';
import { cyclic } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { letterByLetter } from './cluster.ts';

/**
 * How far ink runs out of where it may stand: the deepest place of it outside, by its distance from the
 * border. 0 when all of it is inside, up to what polygons are true to.
 */
export function overRun(ink: Region, room: Region): Mm {
  const box = boxOf(ink);
  if (!box) return 0;
  const plain = plainBox(room);
  if (plain && overBox(box, plain) <= FLATNESS) return 0;
  const outside = letterByLetter(ink, (letters) => subtract(letters, room));
  const deepest = Math.max(0, ...connectedParts(outside).map((part) => depthOf(part, room)));
  return deepest > FLATNESS ? deepest : 0;
}

/** The box that the region is, when it is one; most boards are. */
function plainBox(region: Region): Box | null {
  const [only, ...others] = region;
  if (!only || others.length > 0 || only.holes.length > 0 || only.outer.length !== 4) return null;
  const box = boxOfPoints(only.outer);
  const isCorner = ({ x, y }: Point) =>
    Math.min(Math.abs(x - box.x), Math.abs(x - box.x - box.w)) <= SAME_LENGTH &&
    Math.min(Math.abs(y - box.y), Math.abs(y - box.y - box.h)) <= SAME_LENGTH;
  return only.outer.every(isCorner) ? box : null;
}

const overBox = (inner: Box, outer: Box): Mm =>
  Math.max(
    outer.x - inner.x,
    outer.y - inner.y,
    inner.x + inner.w - outer.x - outer.w,
    inner.y + inner.h - outer.y - outer.h,
  );

/** A part that fills a gap of the room touches it all around: it is half as deep as it is thin. */
function depthOf(part: Region, room: Region): Mm {
  const sides = ringsOf(room).flatMap((ring) =>
    ring.map((from, i): [Point, Point] => [from, cyclic(ring, i + 1)]),
  );
  const farthest = Math.max(
    0,
    ...part.flatMap(({ outer }) =>
      outer.map((p) =>
        sides.reduce((least, [a, b]) => Math.min(least, distanceToSegment(p, a, b)), Infinity),
      ),
    ),
  );
  if (Number.isFinite(farthest) && farthest > FLATNESS) return farthest;
  const box = boxOf(part);
  return box ? Math.min(box.w, box.h) / 2 : 0;
}
