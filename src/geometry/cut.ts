import { at, cyclic, pick } from '../list/at.ts';
import { dot, leftNormal, lerp, subtract } from './point.ts';
import { ringsOf } from './region.ts';
import { boxOfPoints, containsPoint, perimeter, signedArea } from './ring.ts';
import type { Box, Point, Polygon, Region, Ring } from './shape.ts';
import { DUST, SAME_LENGTH } from './tolerance.ts';

/**
 * Areas cut along straight lines. The polygon library works on a grid, so that what it cuts along a slanted line
 * is off by up to a step of it; here every new corner lies on its line as near as numbers tell.
 */

/** A stretch of a border that stays, from where it comes in over the line to where it goes out. */
interface Chain {
  readonly points: Point[];
  /** Places along the line. */
  readonly from: number;
  to: number;
}

/** What of a region lies to the left of the line through `at` along `along`. */
export function leftOf(region: Region, at: Point, along: Point): Region {
  const normal = leftNormal(along);
  const whole: Ring[] = [];
  const chains: Chain[] = [];
  let cut = false;
  for (const ring of ringsOf(region)) {
    // Corners on the line count as lying beyond it, so that every border crosses it an even number of times.
    const depths = ring.map((p) => dot(subtract(p, at), normal));
    const first = depths.findIndex((d, i) => d > DUST && cyclic(depths, i - 1) <= DUST);
    if (first >= 0) chains.push(...chainsOf(ring, depths, first, along));
    else if (depths.every((d) => d > DUST)) {
      whole.push(ring);
      continue;
    }
    cut = true;
  }
  return cut ? regionOf([...whole, ...linked(chains)]) : region;
}

/** The area that regions share with a convex ring, counterclockwise. */
export function withinConvex(region: Region, ring: Ring): Region {
  // Most pieces of a fill lie clear of its outline.
  const clear = clearOf(region, boxOfPoints(ring));
  if (clear !== null) return clear ? [{ outer: ring, holes: [] }] : [];
  return ring.reduce<Region>((left, p, i) => {
    const along = subtract(cyclic(ring, i + 1), p);
    return left.length > 0 ? leftOf(left, p, along) : left;
  }, region);
}

/**
 * Whether a box that no border comes near lies in the region (true) or beyond it (false); null where one comes near.
 * Asked of every piece of a fill in each step of a drag, so that nothing is made on the way.
 */
function clearOf(region: Region, { x, y, w, h }: Box): boolean | null {
  let inside = false;
  for (const { outer, holes } of region) {
    for (let k = -1; k < holes.length; k++) {
      const ring = k < 0 ? outer : pick(holes, k);
      let a = pick(ring, ring.length - 1);
      for (const b of ring) {
        const beside = (a.x < x && b.x < x) || (a.x > x + w && b.x > x + w);
        if (!beside && !((a.y < y && b.y < y) || (a.y > y + h && b.y > y + h))) return null;
        // A ray to the right from the lower left corner.
        if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) inside = !inside;
        a = b;
      }
    }
  }
  return inside;
}

/** The stretches of a ring that stay; `first` is a corner that stays after one that does not. */
function chainsOf(ring: Ring, depths: readonly number[], first: number, along: Point): Chain[] {
  const chains: Chain[] = [];
  let open: Chain | null = null;
  ring.forEach((_, k) => {
    const i = (first + k) % ring.length;
    const h = (i + ring.length - 1) % ring.length;
    const [p, q] = [pick(ring, h), pick(ring, i)];
    const [dp, dq] = [at(depths, h), at(depths, i)];
    const stays = dq > DUST;
    if (stays !== (open !== null)) {
      const crossing = lerp(p, q, Math.min(1, Math.max(0, dp / (dp - dq))));
      const place = dot(crossing, along);
      if (open) {
        open.points.push(crossing);
        open.to = place;
        open = null;
      } else {
        open = { points: [crossing], from: place, to: place };
        chains.push(open);
      }
    }
    if (stays) open?.points.push(q);
  });
  return chains;
}

/** Rings of stretches that the line joins: from where one goes out to the next along it where one comes in. */
function linked(chains: readonly Chain[]): Ring[] {
  const outs = [...chains].sort((a, b) => a.to - b.to);
  const ins = [...chains].sort((a, b) => a.from - b.from);
  const next = new Map(outs.map((chain, i) => [chain, pick(ins, i)]));
  const rings: Ring[] = [];
  for (const start of chains) {
    const points: Point[] = [];
    for (let chain = next.has(start) ? start : undefined; chain; ) {
      points.push(...chain.points);
      const following = next.get(chain);
      next.delete(chain);
      chain = following && next.has(following) ? following : undefined;
    }
    if (points.length > 0) rings.push(points);
  }
  return rings;
}

/** Polygons of rings that do not cross, each hole in the outline around it; crumbs fall away. */
function regionOf(rings: readonly Ring[]): Region {
  const clean = rings.map(withoutRepeats).filter(isArea);
  const outers = clean.filter((ring) => signedArea(ring) > 0);
  const holes = clean.filter((ring) => signedArea(ring) < 0);
  return outers.map(
    (outer): Polygon => ({
      outer,
      holes: outers.length === 1 ? holes : holes.filter(([p]) => p !== undefined && containsPoint(outer, p)),
    }),
  );
}

/** The corners without those that lie on the next one. */
export const withoutRepeats = <P extends Point>(ring: readonly P[]): P[] =>
  ring.filter((p, i) => {
    const q = cyclic(ring, i + 1);
    return Math.abs(p.x - q.x) > DUST || Math.abs(p.y - q.y) > DUST;
  });

const isArea = (ring: Ring): boolean =>
  ring.length >= 3 && 2 * Math.abs(signedArea(ring)) > SAME_LENGTH * perimeter(ring);
