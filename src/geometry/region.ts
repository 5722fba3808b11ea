import type { Mm } from '../measure/units.ts';
import { boxAround } from './box.ts';
import { boxOfPoints, centroidOfRing, containsPoint, perimeter, reverseRing, signedArea } from './ring.ts';
import { distanceToSegment } from './segment.ts';
import type { Box, Point, Quad, Region, Ring } from './shape.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** No area at all. */
export const EMPTY: Region = [];

/** The corners of a box, counterclockwise from the lower left. */
export const ringOfBox = ({ x, y, w, h }: Box): Quad => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];

/** The box's area; empty when the box has none. */
export function regionOfBox(box: Box): Region {
  if (box.w <= 0 || box.h <= 0) return EMPTY;
  return [{ outer: ringOfBox(box), holes: [] }];
}

/** The area inside a ring that does not cross itself, whichever way it is walked. */
export function regionOfRing(ring: Ring): Region {
  const area = signedArea(ring);
  if (ring.length < 3 || area === 0) return EMPTY;
  return [{ outer: area > 0 ? ring : reverseRing(ring), holes: [] }];
}

/** Every ring: outers counterclockwise, each followed by its holes, clockwise. */
export function ringsOf(region: Region): Ring[] {
  const rings: Ring[] = [];
  for (const polygon of region) rings.push(polygon.outer, ...polygon.holes);
  return rings;
}

/** Area in square millimeters. */
export function areaOf(region: Region): number {
  let sum = 0;
  for (const ring of ringsOf(region)) sum += signedArea(ring);
  return sum;
}

/** Length of all borders, holes included. */
export function perimeterOf(region: Region): Mm {
  let sum = 0;
  for (const ring of ringsOf(region)) sum += perimeter(ring);
  return sum;
}

/** Smallest box around the region; null when it is empty. */
export function boxOf(region: Region): Box | null {
  const [first] = region;
  if (!first) return null;
  return region.length === 1
    ? boxOfPoints(first.outer)
    : boxAround(region.map(({ outer }) => boxOfPoints(outer)));
}

/** Center of the area; the origin when the region is empty. */
export function centroidOf(region: Region): Point {
  let sum = 0;
  let sx = 0;
  let sy = 0;
  for (const ring of ringsOf(region)) {
    const area = signedArea(ring);
    const center = centroidOfRing(ring);
    sum += area;
    sx += area * center.x;
    sy += area * center.y;
  }
  if (sum !== 0) return { x: sx / sum, y: sy / sum };
  return region[0] ? centroidOfRing(region[0].outer) : { x: 0, y: 0 };
}

/** Every point moved by `fn`. A map that mirrors turns the rings round again, so that outers stay counterclockwise. */
export function transformRegion(region: Region, fn: (p: Point) => Point): Region {
  return region.map((polygon) => {
    const outer = polygon.outer.map(fn);
    const holes = polygon.holes.map((hole) => hole.map(fn));
    return signedArea(outer) >= 0
      ? { outer, holes }
      : { outer: reverseRing(outer), holes: holes.map(reverseRing) };
  });
}

/** Every point moved by the same way, which turns no ring round. */
export function translateRegion(region: Region, dx: Mm, dy: Mm): Region {
  const moved = (ring: Ring): Ring => ring.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
  return region.map(({ outer, holes }) => ({
    outer: moved(outer),
    holes: holes.length === 0 ? holes : holes.map(moved),
  }));
}

/** Whether `p` lies inside the region or on its border. */
export function containsPointInRegion(region: Region, p: Point): boolean {
  return region.some(
    (polygon) =>
      containsPoint(polygon.outer, p) &&
      // A point on the border of a hole is on the border of the region.
      polygon.holes.every((hole) => !containsPoint(hole, p) || isOnRing(hole, p)),
  );
}

function isOnRing(ring: Ring, p: Point): boolean {
  let before = ring[ring.length - 1];
  for (const point of ring) {
    if (before && distanceToSegment(p, before, point) <= SAME_LENGTH) return true;
    before = point;
  }
  return false;
}

/**
 * Whether all of the box lies inside the region and clear of its border. Says no where a side's own box meets it:
 * a slanted side may be clear of it all the same.
 */
export function containsBox(region: Region, box: Box): boolean {
  const clear = ringsOf(region).every((ring) => {
    let before = ring[ring.length - 1];
    for (const point of ring) {
      if (before && boxesMeet(boxOfPoints([before, point]), box)) return false;
      before = point;
    }
    return true;
  });
  return clear && containsPointInRegion(region, box);
}

/** Whether two boxes overlap or touch. */
export function boxesMeet(a: Box, b: Box): boolean {
  return (
    a.x <= b.x + b.w + SAME_LENGTH &&
    b.x <= a.x + a.w + SAME_LENGTH &&
    a.y <= b.y + b.h + SAME_LENGTH &&
    b.y <= a.y + a.h + SAME_LENGTH
  );
}

/** What of a region may lie in one of the boxes: polygons whose own box meets one, with the holes that do so too. */
export const nearTo = (region: Region, boxes: readonly Box[]): Region => nearIn(region)(boxes);

/** The same for several looks at one region. */
export function nearIn(region: Region): (boxes: readonly Box[]) => Region {
  const boxed = (ring: Ring) => ({ ring, own: boxOfPoints(ring) });
  const all = region.map(({ outer, holes }) => ({ ...boxed(outer), holes: holes.map(boxed) }));
  return (boxes) => {
    const meets = ({ own }: { readonly own: Box }): boolean => boxes.some((box) => boxesMeet(box, own));
    return all
      .filter(meets)
      .map(({ ring, holes }) => ({ outer: ring, holes: holes.filter(meets).map((hole) => hole.ring) }));
  };
}
