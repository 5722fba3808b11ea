import { clipPolyline, intersect, offset, subtract, union } from '../geometry/clip.ts';
import { add, distance, dot, leftNormal, subtract as minus, scale } from '../geometry/point.ts';
import { regionOfRing, ringsOf } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { at, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Chosen, Spread } from './chosen.ts';
import { atCorners, lengthOf } from './spread.ts';

/** A stretch that cannot hold is moved in by up to this share of the spacing; farther in the grid begins. */
const FARTHEST_IN = 0.5;
/** A gap in a row no longer than this share of the spacing is no gap. */
const GAP = 0.5;
/** A moved stretch will do that holds along this share of what it takes the place of. */
const ENOUGH = 0.5;
/** Nearer to a seam only if that holds along so much more. */
const MUCH_MORE = 2;
/** Depths to try for one stretch. */
const MOST_TRIES = 8;

const closed = (ring: readonly Point[]): Point[] => (ring[0] ? [...ring, ring[0]] : []);

/** Inward normal at each point of a line along a ring whose region lies on its left. */
function normalsOf(line: readonly Point[]): Point[] {
  return line.map((p, i) => {
    const before = line[i - 1] ?? p;
    const after = line[i + 1] ?? p;
    return leftNormal(minus(after, before));
  });
}

const moved = (line: readonly Point[], by: Mm): Point[] => {
  const normals = normalsOf(line);
  return line.map((p, i) => add(p, scale(pick(normals, i), by)));
};

/** Everything up to `far` inward of a line. */
function corridor(line: readonly Point[], far: Mm): Region {
  const quads = line.slice(1).map((b, i) => {
    const a = pick(line, i);
    const inward = scale(leftNormal(minus(b, a)), far);
    return regionOfRing([a, b, add(b, inward), add(a, inward)]);
  });
  return union(quads);
}

/** How far inward of the line a point lies: over the nearest of its segments. */
function depthOf(line: readonly Point[], p: Point): Mm {
  let best = Number.POSITIVE_INFINITY;
  line.slice(1).forEach((b, i) => {
    const a = pick(line, i);
    const along = minus(b, a);
    const size = distance(a, b);
    if (size === 0) return;
    const t = Math.min(1, Math.max(0, dot(minus(p, a), along) / (size * size)));
    best = Math.min(best, distance(p, add(a, scale(along, t))));
  });
  return best;
}

/** Depths at which a line moved inward may begin or end to hold: nothing changes but at a corner of the room. */
function depthsInto(line: readonly Point[], room: Region, far: Mm, ease: Mm): Mm[] {
  const depths = ringsOf(intersect(room, corridor(line, far)))
    .flatMap((ring) => ring.map((p) => depthOf(line, p) + ease))
    .sort((a, b) => a - b);
  return [
    0,
    ...depths.filter((depth, i) => depth - (i === 0 ? 0 : at(depths, i - 1)) > ease).slice(0, MOST_TRIES),
  ];
}

/** Where something can be driven in, by how clear of every seam. */
export interface Rooms {
  /** Well clear. */
  readonly best: Region;
  /** Nearer, and nearest last; found when they are asked for. */
  readonly nearer: () => readonly Region[];
}

function* inTurn({ best, nearer }: Rooms): Generator<Region> {
  yield best;
  yield* nearer();
}

/**
 * What holds of a stretch that lies on a seam or beside the wood: the nearest place farther in where enough of
 * it does. Rather farther in and well clear of the seam than near to it; where nothing holds enough, the most.
 */
function held(line: readonly Point[], rooms: Rooms, far: Mm, ease: Mm): Point[][] {
  let best: Point[][] = [];
  let most = 0;
  for (const room of inTurn(rooms)) {
    for (const depth of depthsInto(line, room, far, ease)) {
      const parts = clipPolyline(moved(line, depth), room);
      const holds = parts.reduce((sum, part) => sum + lengthOf(part), 0);
      if (holds >= ENOUGH * lengthOf(line)) return parts;
      if (holds > MUCH_MORE * most) [best, most] = [parts, holds];
    }
  }
  return best;
}

/**
 * Places along every edge of a sheet, openings too, `fromEdge` clear of it. Where a joint of what lies beneath
 * runs under the row, or the wood ends short of it, that stretch stands farther in: clear of the sheet's edge
 * and of the joint alike.
 *
 * @param chosen takes the places
 * @param inside the sheet drawn in by the edge distance
 * @param rooms where something can be driven in, drawn out by `ease`
 */
export function placeEdges(chosen: Chosen, inside: Region, rooms: Rooms, spread: Spread, ease: Mm): void {
  const { spacing } = spread;
  const { best } = rooms;
  const rings = ringsOf(inside).map(closed);
  for (const line of rings.flatMap((ring) => clipPolyline(ring, best))) chosen.row(line, spread);
  const elsewhere = subtract(offset(inside, ease, 'miter'), best);
  const missing = rings
    .flatMap((ring) => clipPolyline(ring, elsewhere))
    .flatMap(atCorners)
    .filter((line) => lengthOf(line) > GAP * spacing);
  for (const line of missing) {
    for (const part of held(line, rooms, FARTHEST_IN * spacing, ease)) chosen.row(part, spread);
  }
}
